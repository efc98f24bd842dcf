/* The equilibrium of water without solids: Newton's method in the logarithms of the components' activities and the ionic strength. */
#include <float.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include "plant.h"

enum { MOST = 32, DAVIES = 0, DEBYE_HUCKEL = 1 };

typedef struct {
    double charge, a, b, water, log10_at_25, enthalpy, analytic[6];
    int kind, is_analytic, terms, component[MOST];
    double coefficient[MOST];
} Species;

/* The last water of a tank, from which the next is solved. */
typedef struct {
    double last[MOST], last_celsius, x[MOST], strength, water, ph;
    int present[MOST], is_warm;
} Water;

static int components, species_count, count;
static double charge_of[MOST];
static Species *species;
static double *ln_constant;
static Water *waters;
static double debye_a, debye_b;
static double temperature = NAN;

static int place[MOST];
static double total[MOST], sum[MOST], absolute_sum[MOST], ionic_slope[MOST], strength_slope[MOST], residual[MOST], step[MOST], from_strength[MOST];
static double hessian[MOST][MOST];
static double calculated, self_slope;
long equilibria;

void read_chemistry(void)
{
    components = whole();
    for (int index = 0; index < components; index++)
        charge_of[index] = number();
    species_count = whole();
    species = room_for(species_count, sizeof(Species));
    ln_constant = room_for(species_count, sizeof(double));
    for (int index = 0; index < species_count; index++) {
        Species *one = &species[index];
        one->charge = number();
        one->kind = whole();
        one->a = number();
        one->b = number();
        one->water = number();
        one->log10_at_25 = number();
        one->enthalpy = number();
        one->is_analytic = whole();
        for (int term = 0; term < 6; term++)
            one->analytic[term] = number();
        one->terms = whole();
        for (int term = 0; term < one->terms; term++) {
            one->component[term] = whole();
            one->coefficient[term] = number();
        }
    }
    waters = room_for(plant.tanks, sizeof(Water));
    for (int index = 0; index < plant.tanks; index++) {
        waters[index].last_celsius = NAN;
        waters[index].water = 1.0;
    }
}

static void set_temperature(double celsius)
{
    if (celsius == temperature)
        return;
    temperature = celsius;
    double kelvin = celsius + 273.15;
    for (int index = 0; index < species_count; index++) {
        const Species *one = &species[index];
        const double *a = one->analytic;
        double log10_k = one->is_analytic
            ? a[0] + a[1] * kelvin + a[2] / kelvin + a[3] * log10(kelvin) + a[4] / (kelvin * kelvin) + a[5] * kelvin * kelvin
            : one->log10_at_25 - one->enthalpy / (8.31446262e-3 * log(10)) * (1 / kelvin - 1 / 298.15);
        ln_constant[index] = log(10) * log10_k;
    }
    double at_1000_bar = 3.4279e2 * exp(kelvin * (-5.0866e-3 + kelvin * 9.4690e-7));
    double c = -2.0525 + 3.1159e3 / (-1.8289e2 + kelvin);
    double b = -8.0325e3 + 4.2142e6 / kelvin + 2.1417 * kelvin;
    double permittivity = at_1000_bar + c * log((b + 1.01325) / (b + 1000));
    double density = (999.83952 + celsius * (16.945176 + celsius * (-7.9870401e-3 + celsius * (-46.170461e-6
        + celsius * (105.56302e-9 - celsius * 280.54253e-12))))) / (1 + 16.879850e-3 * celsius) / 1000;
    double bjerrum = 1.671008e-3 / (permittivity * kelvin);
    double per_centimetre = sqrt(8 * M_PI * 6.02214076e23 * bjerrum * density / 1000);
    debye_a = per_centimetre * bjerrum / (2 * log(10));
    debye_b = per_centimetre / 1e8;
}

static void coefficient_of(const Species *one, double strength, double *ln, double *slope)
{
    double used = fmin(strength, 2.0), root = sqrt(used), square = one->charge * one->charge;
    double value, change;
    if (one->kind == DAVIES) {
        value = -debye_a * square * (root / (1 + root) - 0.3 * used);
        change = -debye_a * square * (0.5 / (root * (1 + root) * (1 + root)) - 0.3);
    } else if (one->kind == DEBYE_HUCKEL) {
        double denominator = 1 + debye_b * one->a * root;
        value = -debye_a * square * root / denominator + one->b * used;
        change = -debye_a * square * 0.5 / (root * denominator * denominator) + one->b;
    } else {
        value = 0.1 * used;
        change = 0.1;
    }
    *ln = log(10) * value;
    *slope = strength > used ? 0 : log(10) * change;
}

static void evaluate(Water *water)
{
    calculated = self_slope = 0;
    memset(sum, 0, sizeof sum);
    memset(absolute_sum, 0, sizeof absolute_sum);
    memset(ionic_slope, 0, sizeof ionic_slope);
    memset(strength_slope, 0, sizeof strength_slope);
    memset(hessian, 0, sizeof hessian);
    double ln_water = log(water->water), solutes = 0, last_charge = NAN, last_a = 0, last_b = 0, ln = 0, slope = 0;
    int last_kind = -1;
    for (int index = 0; index < species_count; index++) {
        const Species *one = &species[index];
        int is_present = 1;
        for (int term = 0; term < one->terms; term++)
            is_present &= place[one->component[term]] >= 0;
        if (!is_present)
            continue;
        if (one->charge != last_charge || one->kind != last_kind || one->a != last_a || one->b != last_b) {
            coefficient_of(one, water->strength, &ln, &slope);
            last_charge = one->charge, last_kind = one->kind, last_a = one->a, last_b = one->b;
        }
        double ln_molality = ln_constant[index] + one->water * ln_water - ln;
        for (int term = 0; term < one->terms; term++)
            ln_molality += one->coefficient[term] * water->x[place[one->component[term]]];
        double molality = exp(fmin(ln_molality, 30)), half = 0.5 * one->charge * one->charge;
        solutes += molality;
        calculated += half * molality;
        self_slope += half * molality * slope;
        for (int term = 0; term < one->terms; term++) {
            int row = place[one->component[term]];
            double share = one->coefficient[term] * molality;
            sum[row] += share;
            absolute_sum[row] += fabs(share);
            ionic_slope[row] += share * slope;
            strength_slope[row] += share * half;
            for (int other = 0; other <= term; other++)
                hessian[row][place[one->component[other]]] += share * one->coefficient[other];
        }
    }
    double target = fmax(0.5, 1 - 0.017 * solutes);
    water->water += (target - water->water) / (1 + 0.05 * solutes);
}

static void factor(void)
{
    for (int column = 0; column < count; column++) {
        double diagonal = hessian[column][column], pivot = diagonal;
        for (int item = 0; item < column; item++)
            pivot -= hessian[column][item] * hessian[column][item];
        double root = sqrt(fmax(pivot, fmax(1e-13 * diagonal, 1e-290)));
        hessian[column][column] = root;
        for (int row = column + 1; row < count; row++) {
            double value = hessian[row][column];
            for (int item = 0; item < column; item++)
                value -= hessian[row][item] * hessian[column][item];
            hessian[row][column] = value / root;
        }
    }
}

static void substitute(double *vector)
{
    for (int row = 0; row < count; row++) {
        for (int item = 0; item < row; item++)
            vector[row] -= hessian[row][item] * vector[item];
        vector[row] /= hessian[row][row];
    }
    for (int row = count - 1; row >= 0; row--) {
        vector[row] /= hessian[row][row];
        for (int item = 0; item < row; item++)
            vector[item] -= hessian[row][item] * vector[row];
    }
}

static int newton(Water *water)
{
    double largest = INFINITY, totals = 0;
    for (int item = 0; item < count; item++)
        totals += fabs(total[item]);
    for (int iteration = 0; iteration < 60; iteration++) {
        evaluate(water);
        double mismatch = calculated - water->strength, worst = fabs(mismatch) / (water->strength + calculated);
        for (int item = 0; item < count; item++) {
            residual[item] = total[item] - sum[item];
            double relative = fabs(residual[item]) / (absolute_sum[item] + 1e-15 / 1e-10 * totals);
            if (!(relative <= worst))
                worst = relative;
        }
        if (worst <= 1e-10 && largest < 1e-4)
            return 1;
        factor();
        memcpy(step, residual, sizeof step);
        memcpy(from_strength, ionic_slope, sizeof from_strength);
        substitute(step);
        substitute(from_strength);
        double known = -mismatch, slope = -(1 + self_slope);
        for (int item = 0; item < count; item++) {
            known -= strength_slope[item] * step[item];
            slope += strength_slope[item] * from_strength[item];
        }
        double change = known / slope;
        largest = 0;
        for (int item = 0; item < count; item++) {
            step[item] += from_strength[item] * change;
            largest = fmax(largest, fabs(step[item]));
        }
        if (!isfinite(largest))
            return 0;
        double share = largest <= 1 ? 1 : (1 + log(largest)) / largest;
        for (int item = 0; item < count; item++)
            water->x[item] += share * step[item];
        double strength = water->strength, moved = strength + share * change;
        water->strength = fmin(fmax(moved, fmax(1e-12, 0.1 * strength)), 10 * strength + 0.1);
    }
    return 0;
}

static void guess(Water *water)
{
    water->water = 1.0;
    double strength = 1e-12;
    for (int item = 0; item < count; item++) {
        strength += fabs(total[item]);
        water->x[item] = item > 0 ? log(total[item]) - 1 : -7 * log(10);
    }
    water->strength = fmin(strength, 0.1);
    for (int sweep = 0; sweep < 25; sweep++) {
        evaluate(water);
        for (int item = 0; item < count; item++) {
            double produced = 0.5 * (absolute_sum[item] + sum[item]), consumed = 0.5 * (absolute_sum[item] - sum[item]);
            double ratio = (consumed + fmax(total[item], 0)) / (produced + fmax(-total[item], 0));
            double sensitivity = fmax(1, hessian[item][item] / absolute_sum[item]);
            water->x[item] += fmin(fmax(log(ratio) / (2 * sensitivity), -5), 5);
        }
    }
}

double acidity(int tank, const double *dissolved, double celsius)
{
    Water *water = &waters[tank];
    int same = fabs(celsius - water->last_celsius) < 1e-9;
    for (int index = 0; same && index < components; index++)
        same = fabs(dissolved[index] - water->last[index]) <= 1e-9 * water->last[index];
    if (same)
        return water->ph;
    equilibria++;
    set_temperature(celsius);
    count = 0;
    int is_warm = water->is_warm;
    double charge = 0;
    for (int index = 0; index <= components; index++) {
        int present = index == 0 || dissolved[index - 1] > 1e-16;
        is_warm &= present == water->present[index];
        water->present[index] = present;
        place[index] = present ? count : -1;
        if (!present)
            continue;
        if (index > 0) {
            total[count] = dissolved[index - 1];
            charge += dissolved[index - 1] * charge_of[index - 1];
        }
        count++;
    }
    total[0] = -charge;
    if (!is_warm)
        guess(water);
    if (!newton(water)) {
        guess(water);
        if (!newton(water)) {
            fprintf(stderr, "the water of tank %d has no equilibrium\n", tank);
            exit(1);
        }
    }
    water->is_warm = 1;
    memcpy(water->last, dissolved, components * sizeof(double));
    water->last_celsius = celsius;
    return water->ph = -water->x[0] / log(10);
}
