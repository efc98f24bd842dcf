/*
 * Flocs that form, settle and are stirred up in a tank, written by hand from what the plant's specification says of it and from the laws that it names:
 * J. F. Richardson and W. N. Zaki, Trans. Inst. Chem. Eng. 32 (1954) 35; Stokes; G. J. Kynch, Trans. Faraday Soc. 48 (1952) 166; Y. Argaman and W. J. Kaufman, J. San. Eng. Div. ASCE 96 (1970) 223;
 * Smoluchowski's collisions with Camp and Stein's shear. The state has litres, grams, m and contents.
 */
#include <math.h>
#include "plant.h"

/* From the surface down: litres of clear water, of water with flocs and of what lies; grams above what lies; g/L in flocs in the middle, and in none above what lies. */
typedef struct { double litres, clear, middle, lying, suspended, crowd, loose; } Column;

static double weight(const Settler *settler, const double *contents, int count)
{
    double grams = 0.0;
    for (int content = 0; content < count; content++)
        grams += fmax(0.0, contents[content]) * settler->grams[content];
    return grams;
}

static Column column_of(int index, const double *state)
{
    const Settler *settler = &plant.settler[index];
    Column column;
    column.litres = state[volume_of(settler->tank)];
    column.lying = weight(settler, state + bed_of(index), plant.contents) / settler->bed_density;
    column.clear = fmin(fmax(0.0, state[clear_of(index)]), column.litres - column.lying);
    column.middle = column.litres - column.lying - column.clear;
    column.suspended = weight(settler, state + mixed_of(settler->tank), plant.contents);
    double flocs = fmin(fmax(0.0, state[flocs_of(index)]), column.suspended);
    column.crowd = flocs / fmax(column.middle, 1e-3 * column.litres);
    column.loose = (column.suspended - flocs) / (column.litres - column.lying);
    return column;
}

/* How much of a height of 100 mm around where a line draws lies below a surface that stands so high. */
static double below(double surface, double low, double high) { return fmin(1.0, fmax(0.0, (surface - low) / (high - low))); }

void settler_draws(int index, Draw draw, double flow, int target, const double *state, double *out)
{
    const Settler *settler = &plant.settler[index];
    Column column = column_of(index, state);
    double metres = 1.0 / (1000.0 * plant.tank[settler->tank].area), depth = column.litres * metres;
    double height = draw.from_surface ? fmax(0.0, depth - draw.metres) : fmin(draw.metres, depth);
    double low = fmax(0.0, height - 0.05), high = fmax(low + 0.005, fmin(depth, height + 0.05));
    double lying = below(column.lying * metres, low, high);
    double under_clear = below((column.litres - column.clear) * metres, low, high);
    double clear = fmin(1.0 - under_clear, 1.0 - lying), middle = 1.0 - clear - lying;
    double grams = flow * ((1.0 - lying) * column.loose + middle * column.crowd);
    int mixed = mixed_of(settler->tank), bed = bed_of(index);
    for (int content = 0; content < plant.contents; content++) {
        double floating, settled = 0.0;
        if (settler->grams[content] > 0.0) {
            floating = column.suspended > 0.0 ? grams / column.suspended * state[mixed + content] : 0.0;
            settled = column.lying > 0.0 ? flow * lying / column.lying * state[bed + content] : 0.0;
        } else {
            floating = flow / column.litres * state[mixed + content];
        }
        out[mixed + content] -= floating;
        out[bed + content] -= settled;
        out[target + content] += floating + settled;
    }
    out[clear_of(index)] -= flow * clear;
    out[flocs_of(index)] -= flow * middle * column.crowd;
}

/* All solids are as flocs as those in them: what is caught or broken is of all of them alike. */
static void flocculate(const Settler *settler, int index, Column column, double speed, double mu, const double *state, double *out)
{
    if (speed <= 0.0 || column.suspended <= 0.0)
        return;
    double shear = sqrt(settler->watts * speed * speed * speed / (mu * column.litres / 1000.0));
    double hydroxide = weight(settler, state + mixed_of(settler->tank), plant.dissolved);
    double sticking = hydroxide > 0.0 ? hydroxide / (hydroxide + 0.02 * (column.suspended - hydroxide)) : 0.0;
    double flocs = state[flocs_of(index)];
    out[flocs_of(index)] += 5.1e-5 * sticking * shear * (column.suspended - flocs) - settler->breaking * shear * shear * flocs;
    double volume_share = column.suspended / column.litres / settler->floc_density;
    double growth = 4.0 / (3.0 * M_PI) * sticking * volume_share * shear;
    double size = fmax(2e-6, state[floc_size_of(index)]), largest = settler->floc_size * sqrt(50.0 / fmax(5.0, shear));
    out[floc_size_of(index)] += size * (1.0 - size / largest) / (1.0 / growth + 20.0);
}

void settler_rates(int index, double time, const double *state, double *out)
{
    const Settler *settler = &plant.settler[index];
    const Tank *tank = &plant.tank[settler->tank];
    Column column = column_of(index, state);
    double speed = tank->agitator >= 0 ? value_of(&plant.drive[tank->agitator].motion, time) : 0.0;
    double up = fmin(1.0, speed / 0.2), mu = viscosity_of(settler->tank, state);
    flocculate(settler, index, column, speed, mu, state, out);

    /* A floc in water is as much heavier than it as its grains are without the water that they take the place of. */
    double size = fmax(2e-6, state[floc_size_of(index)]);
    double heavier = settler->floc_density * (1.0 - 1000.0 / settler->grain_density);
    double alone = 9.80665 * size * size * heavier / (18.0 * mu);
    double velocity = alone * pow(fmax(0.0, 1.0 - column.crowd / settler->floc_density), 4.65);
    velocity *= column.middle / (column.middle + 1e-3 * column.litres);

    double surface = (1.0 - up) * velocity * tank->area * 1000.0;
    double settled = surface * column.crowd / fmax(0.1, 1.0 - column.crowd / settler->bed_density);
    double stirred = up / tank->lag;
    int mixed = mixed_of(settler->tank), bed = bed_of(index);
    out[clear_of(index)] += surface - stirred * state[clear_of(index)];
    out[flocs_of(index)] -= settled;
    for (int content = 0; content < plant.contents; content++) {
        double falls = settler->grams[content] > 0.0 && column.suspended > 0.0 ? settled / column.suspended * state[mixed + content] : 0.0;
        double rises = stirred * state[bed + content];
        out[mixed + content] += rises - falls;
        out[bed + content] += falls - rises;
        out[flocs_of(index)] += rises * settler->grams[content];
    }
}
