/*
 * A drum filter written by hand from what the plant's specification says of it: vacuum, coat and cake, filtrate through layers and pipes, knife, fall, and the
 * water that layers keep. Pa, m, kg, s; the state has litres and grams.
 */
#include <math.h>
#include "plant.h"

static double effect(int drive, double time) { return value_of(&plant.drive[drive].motion, time); }

static double celsius(const Drum *drum, const double *state) { return state[heat_of(drum->trough)] / state[volume_of(drum->trough)]; }

static double turn_of(const Drum *drum, double time) { return drum->turn / fmax(0.01, effect(drum->motor, time)); }

/* Grams of filter aid, and of the other solids by the weights of a mole. */
static double aid_grams(int index, const double *state) { return state[held_of(index) + plant.drum[index].aid]; }

static double other_grams(int index, const double *state)
{
    double grams = 0.0;
    for (int content = 0; content < plant.contents; content++)
        if (content != plant.drum[index].aid)
            grams += state[held_of(index) + content] * plant.drum[index].grams[content];
    return grams;
}

static double coat_metres(int index, const double *state)
{
    const Drum *drum = &plant.drum[index];
    return aid_grams(index, state) / 1000.0 / (drum->coat_density * drum->area);
}

static double clean_resistance(const Drum *drum, double coat) { return drum->cloth + coat / drum->coat_permeability; }

static double cake_alpha(const Drum *drum, double pressure) { return drum->cake_resistance * pow(pressure, drum->cake_power); }

/* What a litre of the trough's water would leave, g, all of it kept. */
static void in_trough(const Drum *drum, const double *state, double *aid, double *other)
{
    double litres = state[volume_of(drum->trough)];
    *aid = fmax(0.0, state[mixed_of(drum->trough) + drum->aid]) / litres;
    *other = 0.0;
    for (int content = 0; content < plant.contents; content++)
        if (content != drum->aid)
            *other += fmax(0.0, state[mixed_of(drum->trough) + content]) * drum->grams[content] / litres;
}

/* The share of solids that stays, no more than nine tenths of the volume drawn. */
static double retention_of(const Drum *drum, const double *state, double coat, double *aid, double *other)
{
    double keeps = 1.0 - (1.0 - drum->holds_back) * exp(-coat / drum->closes);
    in_trough(drum, state, aid, other);
    double layer = keeps * (*aid / drum->coat_density + *other / drum->cake_density);
    if (layer > 0.9)
        keeps *= 0.9 / layer;
    *aid *= keeps;
    *other *= keeps;
    return keeps;
}

static double laid_down(const Drum *drum, const double *state, double coat)
{
    double aid, other;
    retention_of(drum, state, coat, &aid, &other);
    return aid / drum->coat_density + other / drum->cake_density;
}

/* m/s of a drum of which each place filters from nothing. */
static double flux(const Drum *drum, double alpha_c, double mu, double resistance, double pressure, double turn)
{
    double medium = resistance / turn;
    double root = sqrt(medium * medium + 2.0 * alpha_c * pressure * drum->submerged / (mu * turn));
    return 2.0 * pressure * drum->submerged / (mu * turn) / (root + medium);
}

double drum_wants(int index, double time, const double *state)
{
    const Drum *drum = &plant.drum[index];
    double pressure = state[vacuum_of(index)];
    if (pressure <= 0.0)
        return 0.0;
    double turn = turn_of(drum, time), coat = coat_metres(index, state), mu = viscosity_of(drum->trough, state), aid, other;
    retention_of(drum, state, coat, &aid, &other);
    double filtrate = 1.0 - aid / drum->coat_density - other / drum->cake_density;
    double dry = (aid + other) / filtrate;
    double alpha_c = (aid / (drum->coat_permeability * drum->coat_density) + other * cake_alpha(drum, pressure)) / filtrate;
    double clean = clean_resistance(drum, coat);
    double speed = flux(drum, alpha_c, mu, clean, pressure, turn);
    double left = other_grams(index, state) / 1000.0 / drum->area - speed * dry * turn;
    if (left > 0.0)
        speed = flux(drum, alpha_c, mu, clean + cake_alpha(drum, pressure) * left, pressure, turn);
    double litres = speed * drum->area * 1000.0, ratio = litres / drum->carry;
    return 2.0 * litres / (1.0 + sqrt(1.0 + 4.0 * ratio * ratio)) / (1.0 - laid_down(drum, state, coat));
}

/* How full pores are after so many seconds in the air (Wakeman and Tarleton). */
static double full(double permeability, double porosity, double thickness, double pressure, double mu, double seconds)
{
    const double tension = 0.0728;
    double beyond = pressure - 4.6 * tension * sqrt(porosity / (180.0 * permeability));
    if (beyond <= 0.0 || thickness <= 0.0)
        return 1.0;
    double least = fmin(1.0, 0.155 * (1.0 + 0.031 * pow(180.0 * permeability * pressure / (thickness * tension), -0.49)));
    if (least >= 1.0)
        return 1.0;
    double z = permeability * beyond * seconds / (mu * thickness * thickness * porosity * (1.0 - least));
    return least + (1.0 - least) / (1.0 + fmin(1.08 * pow(z, 0.88), 1.46 * pow(z, 0.48)));
}

typedef struct { double coat_cut, cake_cut, on_drum; } Water;

static Water water_of(int index, double time, const double *state)
{
    const Drum *drum = &plant.drum[index];
    double pressure = state[vacuum_of(index)], mu = viscosity_of(drum->trough, state), dry = 1.0 - drum->submerged;
    double coat = coat_metres(index, state), load = fmax(0.0, other_grams(index, state) / 1000.0 / drum->area);
    double sealing = 1.0 - exp(-load / 0.01);
    double coat_porosity = 1.0 - drum->coat_density / drum->coat_grain, cake_porosity = 1.0 - drum->cake_density / drum->cake_grain;
    double coat_pores = aid_grams(index, state) * (1.0 / drum->coat_density - 1.0 / drum->coat_grain);
    double cake_pores = other_grams(index, state) * (1.0 / drum->cake_density - 1.0 / drum->cake_grain);
    double permeability = pressure > 0.0 ? 1.0 / (cake_alpha(drum, pressure) * drum->cake_density) : 0.0;
    double seconds = dry * turn_of(drum, time), coat_full[2], cake_full[2];
    for (int half = 0; half < 2; half++) {
        double out = half ? 0.5 * seconds : seconds;
        cake_full[half] = permeability > 0.0 ? full(permeability, cake_porosity, load / drum->cake_density, pressure, mu, out) : 1.0;
        double open = full(drum->coat_permeability, coat_porosity, coat, pressure, mu, out);
        coat_full[half] = open + (1.0 - open) * cake_full[half] * sealing;
    }
    return (Water){ coat_full[0] * coat_pores, cake_full[0] * cake_pores,
        (drum->submerged + dry * coat_full[1]) * coat_pores + (drum->submerged + dry * cake_full[1]) * cake_pores };
}

static double soaking_of(int index, Water water, double through, const double *state)
{
    double wanted = (water.on_drum - state[pores_of(index)]) / plant.drum[index].turn;
    return wanted <= 0.0 ? wanted : wanted * through / (wanted + through);
}

double drum_filtrate(int index, double time, double drawn, const double *state)
{
    double through = drawn * (1.0 - laid_down(&plant.drum[index], state, coat_metres(index, state)));
    return through - soaking_of(index, water_of(index, time, state), through, state);
}

/* What is dissolved in so much of a water goes from one place to another. */
static void dissolved(const Drum *drum, double flow, double litres, int strength, int from, int to, const double *state, double *out)
{
    if (flow <= 0.0 || litres <= 0.0)
        return;
    for (int content = 0; content < plant.contents; content++)
        if (drum->grams[content] == 0.0) {
            double amount = flow / litres * state[strength + content];
            out[from + content] -= amount;
            out[to + content] += amount;
        }
}

static void hold(int index, double flow, double coat, Water water, const double *state, double *out)
{
    const Drum *drum = &plant.drum[index];
    int trough = mixed_of(drum->trough), receiver = mixed_of(drum->receiver), held = held_of(index);
    double aid, other, keeps = retention_of(drum, state, coat, &aid, &other), grains = 0.0;
    for (int content = 0; content < plant.contents; content++)
        if (drum->grams[content] > 0.0) {
            double stays = keeps * flow / state[volume_of(drum->trough)] * state[trough + content];
            out[receiver + content] -= stays;
            out[held + content] += stays;
            grains += content == drum->aid ? stays / drum->coat_grain : stays * drum->grams[content] / drum->cake_grain;
        }
    double laid = laid_down(drum, state, coat) * flow;
    double soaking = soaking_of(index, water, flow - laid, state);
    double pores = fmax(0.0, laid - grains);
    double kept = grains + pores + soaking;
    out[filtered_of(index)] = flow - kept;
    out[pores_of(index)] += pores + soaking;
    out[volume_of(drum->receiver)] -= kept;
    out[heat_of(drum->receiver)] -= kept * celsius(drum, state);
    dissolved(drum, pores + fmax(0.0, soaking), state[volume_of(drum->trough)], trough, receiver, held, state, out);
    dissolved(drum, fmax(0.0, -soaking), state[pores_of(index)], held, held, receiver, state, out);
}

static void cut(int index, double time, double coat, Water water, const double *state, double *out)
{
    const Drum *drum = &plant.drum[index];
    double cake = other_grams(index, state) / drum->cake_density / 1000.0 / drum->area;
    double beyond = coat + cake - state[volume_of(drum->knife)] / 1000.0 / plant.tank[drum->knife].area;
    if (beyond <= 0.0)
        return;
    double turns = effect(drum->motor, time) / drum->turn;
    double of_cake = cake > 0.0 ? fmin(1.0, beyond / cake) * turns : 0.0;
    double of_coat = coat > 0.0 ? fmax(0.0, beyond - cake) / coat * turns : 0.0;
    int held = held_of(index);
    for (int content = 0; content < plant.contents; content++)
        if (drum->grams[content] > 0.0) {
            double taken = (content == drum->aid ? of_coat : of_cake) * state[held + content];
            out[held + content] -= taken;
            out[went_out() + 1 + content] += taken;
            out[skimmed_of(index) + (content == drum->aid ? 0 : 1)] += taken * drum->grams[content];
        }
    double pores = state[pores_of(index)];
    double litres = water.on_drum > 0.0 ? fmax(0.0, pores) / water.on_drum * (of_coat * water.coat_cut + of_cake * water.cake_cut) : 0.0;
    out[pores_of(index)] -= litres;
    out[skimmed_of(index) + 2] += litres;
    out[went_out()] += litres + of_coat * aid_grams(index, state) / drum->coat_grain + of_cake * other_grams(index, state) / drum->cake_grain;
    dissolved(drum, litres, pores, held, held, went_out() + 1, state, out);
}

static void fall(int index, const double *state, double *out)
{
    const Drum *drum = &plant.drum[index];
    double weak = fmin(1.0, fmax(0.0, 1.0 - state[vacuum_of(index)] / drum->falls)) / 60.0;
    for (int content = 0; content < plant.contents; content++) {
        double fallen = weak * state[held_of(index) + content];
        out[held_of(index) + content] -= fallen;
        out[mixed_of(drum->trough) + content] += fallen;
    }
    double litres = weak * (state[pores_of(index)] + aid_grams(index, state) / drum->coat_grain + other_grams(index, state) / drum->cake_grain);
    out[pores_of(index)] -= weak * state[pores_of(index)];
    out[volume_of(drum->trough)] += litres;
    out[heat_of(drum->trough)] += litres * celsius(drum, state);
}

void drum_rates(int index, double time, double flow, const double *state, double *out)
{
    const Drum *drum = &plant.drum[index];
    double coat = coat_metres(index, state);
    carry(drum->trough, (Draw){ 0.0, 0 }, drum->receiver, flow, state, out);
    Water water = water_of(index, time, state);
    hold(index, flow, coat, water, state, out);
    double reached = drum->deepest / (1.0 + (drum->deepest / drum->bare - 1.0) * drum->cloth / clean_resistance(drum, coat));
    out[vacuum_of(index)] = (effect(drum->pump, time) * reached - state[vacuum_of(index)]) / drum->lag;
    cut(index, time, coat, water, state, out);
    fall(index, state, out);
}
