/* A plant of tanks, lines and drives written by hand from its equations: what the simulator's speed and results are held against. */
#ifndef PLANT_H
#define PLANT_H

typedef struct { double start, origin, from, to, duration; } Piece;
typedef struct { Piece *pieces; int count, room; double kept; } Ramp;
typedef struct { double travel; int opens_without_power, energised; Ramp motion; } Drive;
typedef struct { double area, overflow, heel, heat_loss, lag, unmixed_lag; int agitator, settler, is_full, is_drawn_down; } Tank;
/* Where a line draws: m above the floor, or below the surface. */
typedef struct { double metres; int from_surface; } Draw;
typedef struct { double celsius, *content; } Source;
typedef struct {
    int from_tank, from_source, to_tank, is_dosed, through, not_through;
    double dead_time, rate, bore, coefficient;
    int *drives, *others;
    Draw draw;
} Pipe;
typedef struct {
    int trough, receiver, knife, motor, pump, aid;
    double turn, area, submerged, carry, deepest, bare, lag, falls, cloth, holds_back;
    double coat_permeability, coat_density, coat_grain, closes;
    double cake_resistance, cake_power, cake_density, cake_grain;
    double *grams;
} Drum;
typedef struct { int tank; double floc_density, grain_density, floc_size, bed_density, breaking, watts, *grams; } Settler;
typedef struct { double time; int drive, on; } Command;

typedef struct {
    double ambient;
    int contents, dissolved, calcium, lime;
    int tanks, drives, sources, pipes, drums, settlers, states, commands;
    Tank *tank;
    Drive *drive;
    Source *source;
    Pipe *pipe;
    Drum *drum;
    Settler *settler;
    double *initial, *tolerance;
    Command *command;
    double scan, seconds;
    double *drawn, *fed, *fed_next, *outside, *wanted, *wanted_by_drum;
} Plant;

extern Plant plant;

/* Where each number of the state stands. */
static inline int per_tank(void) { return 3 + 3 * plant.contents; }
static inline int volume_of(int tank) { return tank * per_tank(); }
static inline int heat_of(int tank) { return tank * per_tank() + 1; }
static inline int overflowed_of(int tank) { return tank * per_tank() + 2; }
static inline int mixed_of(int tank) { return tank * per_tank() + 3; }
static inline int on_the_way_of(int tank) { return tank * per_tank() + 3 + plant.contents; }
static inline int mixing_of(int tank) { return tank * per_tank() + 3 + 2 * plant.contents; }
static inline int passed(int pipe) { return plant.tanks * per_tank() + pipe; }
static inline int vacuum_of(int drum) { return plant.tanks * per_tank() + plant.pipes + drum * (6 + plant.contents); }
static inline int filtered_of(int drum) { return vacuum_of(drum) + 1; }
static inline int skimmed_of(int drum) { return vacuum_of(drum) + 2; }
static inline int pores_of(int drum) { return vacuum_of(drum) + 5; }
static inline int held_of(int drum) { return vacuum_of(drum) + 6; }
static inline int clear_of(int settler) { return vacuum_of(plant.drums) + settler * (3 + plant.contents); }
static inline int flocs_of(int settler) { return clear_of(settler) + 1; }
static inline int floc_size_of(int settler) { return clear_of(settler) + 2; }
static inline int bed_of(int settler) { return clear_of(settler) + 3; }
static inline int came_in(void) { return clear_of(plant.settlers); }
static inline int went_out(void) { return came_in() + plant.contents + 1; }

void *room_for(int count, unsigned long size);
double number(void);
int whole(void);
void read_plant(void);

void move_to(Ramp *ramp, double time, double target, double travel);
double value_of(const Ramp *ramp, double time);
double kink_of(const Ramp *ramp, double time);
void command(int drive, double time, int on);

/* L/s that a drum draws if its trough has it; what goes on to its receiver of so much; and what so much does to the state. */
double drum_wants(int drum, double time, const double *state);
double drum_filtrate(int drum, double time, double drawn, const double *state);
void drum_rates(int drum, double time, double flow, const double *state, double *out);

/* What flocs in a tank do by themselves; and what is drawn there, from it to a place in the state. */
void settler_rates(int settler, double time, const double *state, double *out);
void settler_draws(int settler, Draw draw, double flow, int target, const double *state, double *out);

/* Pa s of a tank's water. */
double viscosity_of(int tank, const double *state);
void carry(int from, Draw draw, int to, double flow, const double *state, double *out);

void rates(double time, const double *state, double *out);
double next_kink(double time);
void let_go(const double *state);

void read_chemistry(void);
/* pH of mol/L dissolved at degrees Celsius. */
double acidity(int tank, const double *dissolved, double celsius);
extern long equilibria;

#endif
