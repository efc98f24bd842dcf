/* Dormand and Prince's method of order 5(4) with its continuous extension, the pH between, and the scans: hand-written main program. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include "plant.h"

static const double nodes[7] = { 0.0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1.0, 1.0 };
static const double weights[7][6] = {
    { 0 },
    { 1.0 / 5 },
    { 3.0 / 40, 9.0 / 40 },
    { 44.0 / 45, -56.0 / 15, 32.0 / 9 },
    { 19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729 },
    { 9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656 },
    { 35.0 / 384, 0.0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84 },
};
static const double error_weights[7] = { 71.0 / 57600, 0.0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40 };
static const double dense_weights[7] = {
    -12715105075.0 / 11282082432.0, 0.0, 87487479700.0 / 32700410799.0, -10690763975.0 / 1880347072.0,
    701980252875.0 / 199316789632.0, -1453857185.0 / 822651844.0, 69997945.0 / 29380423.0,
};

static double *stages[7], *dense[5], *trial, *from, *to, *now, *dissolved;
static double started, ended, next = 0.5, length;
static int has_last_stage;
static long accepted;

static double value_at(int index, double share)
{
    double rest = 1.0 - share;
    return dense[0][index] + share * (dense[1][index] + rest * (dense[2][index] + share * (dense[3][index] + rest * dense[4][index])));
}

static double component(double time, int index) { return length == 0.0 ? to[index] : value_at(index, (time - started) / length); }

static void interpolate(double time, double *state)
{
    if (length == 0.0) {
        memcpy(state, to, plant.states * sizeof(double));
        return;
    }
    double share = (time - started) / length;
    for (int index = 0; index < plant.states; index++)
        state[index] = value_at(index, share);
}

static void truncate_at(double time)
{
    if (time < ended) {
        interpolate(time, to);
        ended = time;
    }
    has_last_stage = 0;
}

static double attempt(double step)
{
    for (int stage = 1; stage < 7; stage++) {
        double *target = stage == 6 ? to : trial;
        for (int index = 0; index < plant.states; index++) {
            double sum = 0.0;
            for (int earlier = 0; earlier < stage; earlier++)
                sum += weights[stage][earlier] * stages[earlier][index];
            target[index] = from[index] + step * sum;
        }
        rates(started + nodes[stage] * step, target, stages[stage]);
    }
    double sum = 0.0;
    for (int index = 0; index < plant.states; index++) {
        double error = 0.0;
        for (int stage = 0; stage < 7; stage++)
            error += error_weights[stage] * stages[stage][index];
        double ratio = step * error / (plant.tolerance[index] + 1e-6 * fmax(fabs(from[index]), fabs(to[index])));
        sum += ratio * ratio;
    }
    return fmax(sqrt(sum / plant.states), 1e-10);
}

static void one_step(double limit)
{
    double *swap = from;
    from = to, to = swap;
    started = ended;
    if (has_last_stage) {
        swap = stages[0], stages[0] = stages[6], stages[6] = swap;
    } else {
        rates(started, from, stages[0]);
    }
    double step = next;
    for (int attempts = 0; attempts < 60; attempts++) {
        int reaches = started + step * 1.01 >= limit;
        double taken = reaches ? limit - started : step;
        double error = attempt(taken);
        double factor = 0.9 * pow(error, -0.2);
        factor = factor < 0.2 ? 0.2 : factor > 5.0 ? 5.0 : factor;
        if (error <= 1.0) {
            ended = reaches ? limit : started + taken;
            next = reaches ? fmax(step, taken * factor) : taken * factor;
            length = taken;
            for (int index = 0; index < plant.states; index++) {
                double difference = to[index] - from[index], slope = taken * stages[0][index] - difference, bend = 0.0;
                for (int stage = 0; stage < 7; stage++)
                    bend += dense_weights[stage] * stages[stage][index];
                dense[0][index] = from[index];
                dense[1][index] = difference;
                dense[2][index] = slope;
                dense[3][index] = difference - taken * stages[6][index] - slope;
                dense[4][index] = taken * bend;
            }
            has_last_stage = 1;
            accepted++;
            return;
        }
        step = taken * fmin(factor, 0.9);
    }
    fprintf(stderr, "no step was small enough\n");
    exit(1);
}

static void take_back(void)
{
    memcpy(to, from, plant.states * sizeof(double));
    ended = started;
    length = 0.0;
    has_last_stage = 0;
    accepted--;
}

/* Above nought where a limit of a tank is passed: its rim, or its heel. */
static double beyond(double time, int tank, int is_rim)
{
    double litres = component(time, volume_of(tank));
    return is_rim ? litres - plant.tank[tank].overflow : plant.tank[tank].heel - litres;
}

static int sign(double value) { return (value > 0) - (value < 0); }

static double crossing(int tank, int is_rim, double low, double high)
{
    double at_low = beyond(low, tank, is_rim), at_high = beyond(high, tank, is_rim);
    int side = 0, last = sign(at_high);
    for (int iteration = 0; iteration < 200 && high - low > 1e-6; iteration++) {
        double middle = (at_high * low - at_low * high) / (at_high - at_low);
        if (!(middle > low && middle < high))
            middle = 0.5 * (low + high);
        double value = beyond(middle, tank, is_rim);
        if (sign(value) == last) {
            high = middle, at_high = value;
            at_low *= side == 1 ? 0.5 : 1.0;
            side = 1;
        } else {
            low = middle, at_low = value;
            at_high *= side == -1 ? 0.5 : 1.0;
            side = -1;
        }
        if (iteration % 3 == 2) {
            middle = 0.5 * (low + high);
            value = beyond(middle, tank, is_rim);
            if (sign(value) == sign(at_high))
                high = middle, at_high = value;
            else
                low = middle, at_low = value;
        }
    }
    return high;
}

static double reaches_limit(int tank, int is_rim)
{
    double start = started;
    for (int part = 1; part <= 4; part++) {
        double end = part == 4 ? ended : started + (ended - started) * part / 4;
        if (beyond(start, tank, is_rim) < 0.0 && beyond(end, tank, is_rim) >= 0.0)
            return crossing(tank, is_rim, start, end);
        start = end;
    }
    return INFINITY;
}

typedef struct { double start, end, at_start, at_end, length; int leads; } Trace;
static Trace *traces;

static double ph_at(int tank, double time)
{
    double litres = component(time, volume_of(tank));
    for (int substance = 0; substance < plant.dissolved; substance++)
        dissolved[substance] = component(time, mixed_of(tank) + substance) / litres;
    return acidity(tank, dissolved, component(time, heat_of(tank)) / litres);
}

static double on_trace(const Trace *trace, double time)
{
    return trace->end > trace->start
        ? trace->at_start + (trace->at_end - trace->at_start) * ((time - trace->start) / (trace->end - trace->start))
        : trace->at_end;
}

static double ph_of(int tank, double time)
{
    Trace *trace = &traces[tank];
    while (trace->end < time) {
        double begin = trace->end, at_begin = trace->at_end, end = fmin(ended, begin + fmin(trace->length, 30.0)), at_end = ph_at(tank, end);
        double error = trace->leads && begin > trace->start
            ? fabs(at_end - (at_begin + (at_begin - trace->at_start) * ((end - begin) / (begin - trace->start))))
            : INFINITY;
        while (!(error <= 0.003)) {
            double middle = 0.5 * (begin + end), at_middle = ph_at(tank, middle);
            error = fabs(at_middle - 0.5 * (at_begin + at_end));
            if (!(error > 0.003) || end - begin <= 0.02)
                break;
            end = middle;
            at_end = at_middle;
        }
        trace->length = fmin(fmax(error < 0.25 * 0.003 ? 2.0 * fmax(end - begin, trace->length) : end - begin, 0.02), 30.0);
        trace->leads = 1;
        trace->start = begin, trace->at_start = at_begin, trace->end = end, trace->at_end = at_end;
    }
    return on_trace(trace, time);
}

static void cut(double time)
{
    truncate_at(time);
    for (int tank = 0; tank < plant.tanks; tank++) {
        Trace *trace = &traces[tank];
        if (trace->end > time) {
            trace->at_end = on_trace(trace, time);
            trace->end = time;
        }
        trace->leads = 0;
    }
}

/* The first tank that reaches its rim or heel within the last step; -1 where none does. */
static int first_limit(double *when, int *first_is_rim)
{
    int first = -1;
    *when = INFINITY;
    for (int tank = 0; tank < plant.tanks; tank++) {
        for (int is_rim = 1; is_rim >= 0; is_rim--) {
            if (is_rim ? plant.tank[tank].is_full : plant.tank[tank].is_drawn_down)
                continue;
            double at = reaches_limit(tank, is_rim);
            if (at < *when)
                first = tank, *when = at, *first_is_rim = is_rim;
        }
    }
    return first;
}

static int nearly_empties_a_tank(void)
{
    for (int tank = 0; tank < plant.tanks; tank++)
        if (!plant.tank[tank].is_drawn_down && to[volume_of(tank)] < 0.5 * plant.tank[tank].heel)
            return 1;
    return 0;
}

static void advance(double time)
{
    while (ended < time) {
        for (int tank = 0; tank < plant.tanks; tank++)
            ph_of(tank, ended);
        double begin = ended;
        one_step(fmin(begin + 120.0, next_kink(begin + 1e-7)));
        int first_is_rim;
        double when;
        int first = first_limit(&when, &first_is_rim);
        while (first >= 0 && nearly_empties_a_tank()) {
            take_back();
            one_step(when);
            first = first_limit(&when, &first_is_rim);
        }
        if (first >= 0)
            cut(when);
        let_go(to);
        if (first >= 0) {
            if (first_is_rim)
                plant.tank[first].is_full = 1;
            else
                plant.tank[first].is_drawn_down = 1;
        }
    }
    interpolate(time, now);
}

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return now.tv_sec + 1e-9 * now.tv_nsec;
}

/* Arguments: how many scans from one printed state to the next. */
int main(int arguments, char **argument)
{
    long every = arguments > 1 ? atol(argument[1]) : 600;
    read_plant();
    read_chemistry();
    unsigned long size = sizeof(double);
    for (int stage = 0; stage < 7; stage++)
        stages[stage] = room_for(plant.states, size);
    for (int power = 0; power < 5; power++)
        dense[power] = room_for(plant.states, size);
    trial = room_for(plant.states, size);
    from = room_for(plant.states, size);
    to = room_for(plant.states, size);
    now = room_for(plant.states, size);
    dissolved = room_for(plant.dissolved, size);
    traces = room_for(plant.tanks, sizeof(Trace));
    memcpy(to, plant.initial, plant.states * size);
    memcpy(now, to, plant.states * size);
    for (int tank = 0; tank < plant.tanks; tank++) {
        traces[tank].at_start = traces[tank].at_end = ph_at(tank, 0.0);
        traces[tank].length = 1.0;
    }
    double begin = seconds(), time = 0.0, ph = 0.0;
    long scans = lround(plant.seconds / plant.scan);
    int due = 0;
    for (long scan = 1; scan <= scans; scan++) {
        int interrupted = 0;
        for (; due < plant.commands && plant.command[due].time <= time + 1e-6; due++, interrupted = 1)
            command(plant.command[due].drive, time, plant.command[due].on);
        if (interrupted) {
            cut(time);
            let_go(to);
        }
        time += plant.scan;
        advance(time);
        for (int tank = 0; tank < plant.tanks; tank++)
            ph = ph_of(tank, time);
        if (scan % every == 0) {
            printf("state %.17g", time);
            for (int index = 0; index < plant.states; index++)
                printf(" %.17g", now[index]);
            for (int tank = 0; tank < plant.tanks; tank++)
                printf(" %.17g", ph_of(tank, time));
            printf("\n");
        }
    }
    printf("steps %ld equilibria %ld seconds %.9f ph %.9f\n", accepted, equilibria, seconds() - begin, ph);
    return 0;
}
