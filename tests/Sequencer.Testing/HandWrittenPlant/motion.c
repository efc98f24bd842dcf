#include <math.h>
#include <stdlib.h>
#include <string.h>
#include "plant.h"

static double end_of(const Piece *piece) { return piece->start + piece->duration; }

static double along(const Piece *piece, double time)
{
    double share = (time - piece->origin) / piece->duration;
    return piece->from + (piece->to - piece->from) * (share < 0.0 ? 0.0 : share > 1.0 ? 1.0 : share);
}

double value_of(const Ramp *ramp, double time)
{
    const Piece *last = &ramp->pieces[ramp->count - 1];
    if (end_of(last) <= time)
        return last->to;
    for (int index = ramp->count - 1; index > 0; index--)
        if (ramp->pieces[index].start <= time)
            return along(&ramp->pieces[index], time);
    return along(&ramp->pieces[0], time);
}

void move_to(Ramp *ramp, double time, double target, double travel)
{
    double from = value_of(ramp, time);
    double duration = fmax(0.05, fabs(target - from) * travel);
    while (ramp->count > 1 && ramp->pieces[ramp->count - 1].start >= time)
        ramp->count--;
    if (ramp->count == ramp->room) {
        ramp->room *= 2;
        ramp->pieces = realloc(ramp->pieces, ramp->room * sizeof(Piece));
    }
    ramp->pieces[ramp->count++] = (Piece){ time, time, from, target, duration };
    while (ramp->count > 2 && ramp->pieces[1].start < time - ramp->kept && ramp->pieces[2].start < time - ramp->kept) {
        memmove(ramp->pieces, ramp->pieces + 1, (ramp->count - 1) * sizeof(Piece));
        ramp->count--;
    }
}

double kink_of(const Ramp *ramp, double time)
{
    double next = INFINITY;
    for (int index = ramp->count - 1; index > 0 && end_of(&ramp->pieces[index]) > time; index--) {
        const Piece *piece = &ramp->pieces[index];
        next = fmin(next, piece->start > time ? piece->start : end_of(piece));
    }
    return next;
}

void command(int index, double time, int on)
{
    Drive *drive = &plant.drive[index];
    drive->energised = on;
    double target = drive->energised != drive->opens_without_power ? 1.0 : 0.0;
    if (target != drive->motion.pieces[drive->motion.count - 1].to)
        move_to(&drive->motion, time, target, drive->travel);
}

static double opening(const Pipe *pipe, double time)
{
    double open = 1.0;
    for (int index = 0; index < pipe->through; index++)
        open = fmin(open, value_of(&plant.drive[pipe->drives[index]].motion, time));
    for (int index = 0; index < pipe->not_through; index++)
        open = fmin(open, 1.0 - value_of(&plant.drive[pipe->others[index]].motion, time));
    return open;
}

static double source_flow(const Pipe *pipe, double time) { return pipe->rate * opening(pipe, time); }

static double wanted_flow(const Pipe *pipe, double time, const double *state)
{
    double open = opening(pipe, time);
    if (pipe->bore <= 0.0)
        return pipe->rate * open;
    const Tank *tank = &plant.tank[pipe->from_tank];
    double level = state[volume_of(pipe->from_tank)] / 1000.0 / tank->area;
    double area = M_PI / 4.0 * pipe->bore * pipe->bore;
    return open * (pipe->coefficient * area * sqrt(2.0 * 9.80665 * fmax(level, 0.0)) * 1000.0);
}

static double limited(int tank, double wanted)
{
    return plant.tank[tank].is_drawn_down && plant.drawn[tank] > plant.fed[tank] ? wanted * plant.fed[tank] / plant.drawn[tank] : wanted;
}

static void sum_wanted(double time, const double *state, int drawn_down)
{
    memset(plant.drawn, 0, plant.tanks * sizeof(double));
    memset(plant.outside, 0, plant.tanks * sizeof(double));
    for (int index = 0; index < plant.pipes; index++) {
        const Pipe *pipe = &plant.pipe[index];
        if (pipe->from_tank >= 0) {
            plant.wanted[index] = wanted_flow(pipe, time, state);
            plant.drawn[pipe->from_tank] += plant.wanted[index];
        } else if (pipe->to_tank >= 0) {
            plant.outside[pipe->to_tank] += source_flow(pipe, time);
        }
    }
    for (int index = 0; index < plant.drums; index++) {
        plant.wanted_by_drum[index] = drum_wants(index, time, state);
        plant.drawn[plant.drum[index].trough] += plant.wanted_by_drum[index];
    }
    memcpy(plant.fed, plant.outside, plant.tanks * sizeof(double));
    int rounds = drawn_down > 1 ? 64 : drawn_down, changed = 1;
    for (int round = 0; round < rounds && changed; round++) {
        memcpy(plant.fed_next, plant.outside, plant.tanks * sizeof(double));
        for (int index = 0; index < plant.pipes; index++) {
            const Pipe *pipe = &plant.pipe[index];
            if (pipe->from_tank >= 0 && pipe->to_tank >= 0)
                plant.fed_next[pipe->to_tank] += limited(pipe->from_tank, plant.wanted[index]);
        }
        for (int index = 0; index < plant.drums; index++)
            if (plant.tank[plant.drum[index].receiver].is_drawn_down)
                plant.fed_next[plant.drum[index].receiver] +=
                    drum_filtrate(index, time, limited(plant.drum[index].trough, plant.wanted_by_drum[index]), state);
        changed = 0;
        for (int index = 0; index < plant.tanks; index++)
            changed |= plant.tank[index].is_drawn_down && fabs(plant.fed_next[index] - plant.fed[index]) > 1e-12 * plant.fed_next[index];
        double *swap = plant.fed;
        plant.fed = plant.fed_next, plant.fed_next = swap;
    }
}

double viscosity_of(int tank, const double *state) { return 2.414e-5 * pow(10.0, 247.8 / (state[heat_of(tank)] / state[volume_of(tank)] + 273.15 - 140.0)); }

void carry(int from, Draw draw, int to, double flow, const double *state, double *out)
{
    double share = flow / state[volume_of(from)];
    double heat = share * state[heat_of(from)];
    out[volume_of(from)] -= flow;
    out[heat_of(from)] -= heat;
    int target = went_out() + 1;
    if (to >= 0) {
        target = mixed_of(to);
        out[volume_of(to)] += flow;
        out[heat_of(to)] += heat;
    } else {
        out[went_out()] += flow;
    }
    if (plant.tank[from].settler >= 0) {
        settler_draws(plant.tank[from].settler, draw, flow, target, state, out);
        return;
    }
    for (int content = 0; content < plant.contents; content++) {
        double amount = share * state[mixed_of(from) + content];
        out[mixed_of(from) + content] -= amount;
        out[target + content] += amount;
    }
}

static void add_contents(double *out, const Source *source, double flow)
{
    for (int content = 0; content < plant.contents; content++)
        out[content] += flow * source->content[content];
}

static void bring(const Pipe *pipe, double flow, double time, double *out)
{
    const Source *source = &plant.source[pipe->from_source];
    out[came_in()] += flow;
    add_contents(out + came_in() + 1, source, flow);
    if (pipe->to_tank < 0) {
        out[went_out()] += flow;
        add_contents(out + went_out() + 1, source, flow);
        return;
    }
    out[volume_of(pipe->to_tank)] += flow;
    out[heat_of(pipe->to_tank)] += flow * source->celsius;
    if (!pipe->is_dosed) {
        add_contents(out + mixed_of(pipe->to_tank), source, flow);
        return;
    }
    double arriving = source_flow(pipe, time - pipe->dead_time);
    add_contents(out + on_the_way_of(pipe->to_tank), source, flow - arriving);
    add_contents(out + mixing_of(pipe->to_tank), source, arriving);
}

static void mix_in(int index, double time, const double *state, double *out)
{
    const Tank *tank = &plant.tank[index];
    double agitated = tank->agitator >= 0 ? value_of(&plant.drive[tank->agitator].motion, time) : 1.0;
    double rate = agitated / tank->lag + (1.0 - agitated) / tank->unmixed_lag;
    int mixed = mixed_of(index), mixing = mixing_of(index);
    for (int content = 0; content < plant.contents; content++) {
        double amount = rate * state[mixing + content];
        out[mixing + content] -= amount;
        out[mixed + content] += amount;
    }
    double volume = state[volume_of(index)];
    if (plant.calcium >= 0) {
        /* Far from saturation: the plant that this is held against has no lime. */
        double dissolving = state[mixed + plant.lime];
        out[mixed + plant.lime] -= dissolving;
        out[mixed + plant.calcium] += dissolving;
    }
    if (tank->heat_loss > 0.0)
        out[heat_of(index)] += (plant.ambient * volume - state[heat_of(index)]) / tank->heat_loss;
}

void rates(double time, const double *state, double *out)
{
    memset(out, 0, plant.states * sizeof(double));
    int drawn_down = 0;
    for (int index = 0; index < plant.tanks; index++)
        drawn_down += plant.tank[index].is_drawn_down;
    if (drawn_down > 0)
        sum_wanted(time, state, drawn_down);
    for (int index = 0; index < plant.pipes; index++) {
        const Pipe *pipe = &plant.pipe[index];
        if (pipe->from_tank < 0) {
            double flow = source_flow(pipe, time);
            out[passed(index)] = flow;
            bring(pipe, flow, time, out);
            continue;
        }
        int tank = pipe->from_tank;
        double flow = limited(tank, wanted_flow(pipe, time, state));
        out[passed(index)] = flow;
        carry(tank, pipe->draw, pipe->to_tank, flow, state, out);
    }
    for (int index = 0; index < plant.drums; index++)
        drum_rates(index, time, limited(plant.drum[index].trough, drum_wants(index, time, state)), state, out);
    for (int index = 0; index < plant.settlers; index++)
        settler_rates(index, time, state, out);
    for (int index = 0; index < plant.tanks; index++) {
        mix_in(index, time, state, out);
        double surplus = out[volume_of(index)];
        if (plant.tank[index].is_full && surplus > 0.0) {
            out[overflowed_of(index)] += surplus;
            carry(index, (Draw){ 0.0, 1 }, -1, surplus, state, out);
        }
    }
}

static double kink_of_pipe(const Pipe *pipe, double time)
{
    double next = INFINITY;
    for (int index = 0; index < pipe->through; index++)
        next = fmin(next, kink_of(&plant.drive[pipe->drives[index]].motion, time));
    for (int index = 0; index < pipe->not_through; index++)
        next = fmin(next, kink_of(&plant.drive[pipe->others[index]].motion, time));
    return next;
}

double next_kink(double time)
{
    double next = INFINITY;
    for (int index = 0; index < plant.pipes; index++) {
        const Pipe *pipe = &plant.pipe[index];
        next = fmin(next, kink_of_pipe(pipe, time));
        if (pipe->dead_time > 0.0)
            next = fmin(next, kink_of_pipe(pipe, time - pipe->dead_time) + pipe->dead_time);
    }
    for (int index = 0; index < plant.drums; index++) {
        next = fmin(next, kink_of(&plant.drive[plant.drum[index].motor].motion, time));
        next = fmin(next, kink_of(&plant.drive[plant.drum[index].pump].motion, time));
    }
    for (int index = 0; index < plant.tanks; index++)
        if (plant.tank[index].agitator >= 0)
            next = fmin(next, kink_of(&plant.drive[plant.tank[index].agitator].motion, time));
    return next;
}

void let_go(const double *state)
{
    for (int index = 0; index < plant.tanks; index++) {
        double litres = state[volume_of(index)];
        double rim = plant.tank[index].overflow, heel = plant.tank[index].heel;
        plant.tank[index].is_full = litres >= rim || (plant.tank[index].is_full && litres > rim - 1e-3);
        plant.tank[index].is_drawn_down = litres <= heel || (plant.tank[index].is_drawn_down && litres < heel + 1e-3);
    }
}
