/* The same equations integrated by CVODE of SUNDIALS (Debian's libsundials-dev), backward differentiation, to 1e-11. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include "plant.h"

static int right_side(realtype time, N_Vector state, N_Vector out, void *data)
{
    (void)data;
    rates(time, N_VGetArrayPointer(state), N_VGetArrayPointer(out));
    return 0;
}

/* Two for each tank: below nought while its rim, or its heel, is not passed; far below where it already stands at it. */
static int limits(realtype time, N_Vector state, realtype *out, void *data)
{
    (void)time;
    (void)data;
    const double *values = N_VGetArrayPointer(state);
    for (int tank = 0; tank < plant.tanks; tank++) {
        double litres = values[volume_of(tank)];
        out[2 * tank] = plant.tank[tank].is_full ? -1e9 : litres - plant.tank[tank].overflow;
        out[2 * tank + 1] = plant.tank[tank].is_drawn_down ? -1e9 : plant.tank[tank].heel - litres;
    }
    return 0;
}

static void demand(int flag, const char *what)
{
    if (flag < 0) {
        fprintf(stderr, "%s: %d\n", what, flag);
        exit(1);
    }
}

/* Arguments: how many seconds from one printed state to the next. */
int main(int arguments, char **argument)
{
    double every = arguments > 1 ? atof(argument[1]) : 60.0;
    read_plant();
    SUNContext context;
    demand(SUNContext_Create(NULL, &context), "context");
    N_Vector state = N_VNew_Serial(plant.states, context), tolerance = N_VNew_Serial(plant.states, context);
    double *values = N_VGetArrayPointer(state);
    memcpy(values, plant.initial, plant.states * sizeof(double));
    for (int index = 0; index < plant.states; index++)
        N_VGetArrayPointer(tolerance)[index] = 1e-5 * (isfinite(plant.tolerance[index]) ? plant.tolerance[index] : 1e-4);
    void *solver = CVodeCreate(CV_BDF, context);
    demand(CVodeInit(solver, right_side, 0.0, state), "init");
    demand(CVodeSVtolerances(solver, 1e-11, tolerance), "tolerances");
    SUNMatrix matrix = SUNDenseMatrix(plant.states, plant.states, context);
    demand(CVodeSetLinearSolver(solver, SUNLinSol_Dense(state, matrix, context), matrix), "linear solver");
    demand(CVodeSetMaxNumSteps(solver, 1000000), "steps");
    demand(CVodeRootInit(solver, 2 * plant.tanks, limits), "roots");
    int *passed_limits = room_for(2 * plant.tanks, sizeof(int));
    double time = 0.0, printed = 0.0;
    int due = 0;
    while (time < plant.seconds - 1e-6) {
        for (; due < plant.commands && plant.command[due].time <= time + 1e-6; due++)
            command(plant.command[due].drive, time, plant.command[due].on);
        let_go(values);
        double stop = fmin(fmin(printed + every, next_kink(time + 1e-7)), due < plant.commands ? plant.command[due].time : INFINITY);
        demand(CVodeReInit(solver, time, state), "begin anew");
        demand(CVodeSetStopTime(solver, stop), "stop");
        int flag = CVode(solver, stop, state, &time, CV_NORMAL);
        demand(flag, "step");
        if (flag == CV_ROOT_RETURN) {
            demand(CVodeGetRootInfo(solver, passed_limits), "limit");
            for (int tank = 0; tank < plant.tanks; tank++) {
                plant.tank[tank].is_full |= passed_limits[2 * tank] > 0;
                plant.tank[tank].is_drawn_down |= passed_limits[2 * tank + 1] > 0;
            }
        }
        if (time >= printed + every - 1e-9) {
            printed += every;
            printf("state %.17g", time);
            for (int index = 0; index < plant.states; index++)
                printf(" %.17g", values[index]);
            printf("\n");
        }
    }
    return 0;
}
