/* Stiff problems of the books, integrated by CVODE of SUNDIALS (Debian's libsundials-dev) to 1e-12. */
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

static void robertson(const double *y, double *f)
{
    f[0] = -0.04 * y[0] + 1e4 * y[1] * y[2];
    f[2] = 3e7 * y[1] * y[1];
    f[1] = -f[0] - f[2];
}

static void van_der_pol(const double *y, double *f)
{
    f[0] = y[1];
    f[1] = ((1 - y[0] * y[0]) * y[1] - y[0]) / 1e-6;
}

static void oregonator(const double *y, double *f)
{
    f[0] = 77.27 * (y[1] + y[0] * (1 - 8.375e-6 * y[0] - y[1]));
    f[1] = (y[2] - (1 + y[0]) * y[1]) / 77.27;
    f[2] = 0.161 * (y[0] - y[2]);
}

static void hires(const double *y, double *f)
{
    f[0] = -1.71 * y[0] + 0.43 * y[1] + 8.32 * y[2] + 0.0007;
    f[1] = 1.71 * y[0] - 8.75 * y[1];
    f[2] = -10.03 * y[2] + 0.43 * y[3] + 0.035 * y[4];
    f[3] = 8.32 * y[1] + 1.71 * y[2] - 1.12 * y[3];
    f[4] = -1.745 * y[4] + 0.43 * (y[5] + y[6]);
    f[5] = -280 * y[5] * y[7] + 0.69 * y[3] + 1.71 * y[4] - 0.43 * y[5] + 0.69 * y[6];
    f[6] = 280 * y[5] * y[7] - 1.81 * y[6];
    f[7] = -f[6];
}

typedef struct { const char *name; void (*rates)(const double *, double *); int count; double start[8]; } Problem;

static const Problem problems[] = {
    { "robertson", robertson, 3, { 1, 0, 0 } },
    { "van-der-pol", van_der_pol, 2, { 2, -0.66 } },
    { "oregonator", oregonator, 3, { 1, 2, 3 } },
    { "hires", hires, 8, { 1, 0, 0, 0, 0, 0, 0, 0.0057 } },
};

static int right_side(realtype time, N_Vector state, N_Vector out, void *data)
{
    (void)time;
    ((const Problem *)data)->rates(N_VGetArrayPointer(state), N_VGetArrayPointer(out));
    return 0;
}

static void demand(int flag)
{
    if (flag < 0) {
        fprintf(stderr, "CVODE: %d\n", flag);
        exit(1);
    }
}

/* Arguments: the problem, the absolute tolerance, and the times at which its state is printed. */
int main(int arguments, char **argument)
{
    const Problem *problem = problems;
    while (strcmp(problem->name, argument[1]) != 0)
        problem++;
    SUNContext context;
    demand(SUNContext_Create(NULL, &context));
    N_Vector state = N_VNew_Serial(problem->count, context);
    double *values = N_VGetArrayPointer(state);
    memcpy(values, problem->start, problem->count * sizeof(double));
    void *solver = CVodeCreate(CV_BDF, context);
    demand(CVodeInit(solver, right_side, 0.0, state));
    demand(CVodeSStolerances(solver, 1e-12, atof(argument[2])));
    demand(CVodeSetUserData(solver, (void *)problem));
    SUNMatrix matrix = SUNDenseMatrix(problem->count, problem->count, context);
    demand(CVodeSetLinearSolver(solver, SUNLinSol_Dense(state, matrix, context), matrix));
    demand(CVodeSetMaxNumSteps(solver, 10000000));
    for (int index = 3; index < arguments; index++) {
        double time, wanted = atof(argument[index]);
        demand(CVodeSetStopTime(solver, wanted));
        demand(CVode(solver, wanted, state, &time, CV_NORMAL));
        for (int component = 0; component < problem->count; component++)
            printf(component > 0 ? " %.17g" : "%.17g", values[component]);
        printf("\n");
    }
    return 0;
}
