#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include "plant.h"

Plant plant;

void *room_for(int count, unsigned long size)
{
    void *room = calloc(count > 0 ? count : 1, size);
    if (room == NULL) {
        fprintf(stderr, "no memory\n");
        exit(1);
    }
    return room;
}

double number(void)
{
    double value;
    if (scanf("%lf", &value) != 1) {
        fprintf(stderr, "a number is wanting\n");
        exit(1);
    }
    return value;
}

int whole(void) { return (int)number(); }

static double *numbers(int count)
{
    double *all = room_for(count, sizeof(double));
    for (int index = 0; index < count; index++)
        all[index] = number();
    return all;
}

static int *wholes(int count)
{
    int *all = room_for(count, sizeof(int));
    for (int index = 0; index < count; index++)
        all[index] = whole();
    return all;
}

static void ready(Ramp *ramp, double value, double kept)
{
    ramp->room = 64;
    ramp->pieces = room_for(ramp->room, sizeof(Piece));
    ramp->count = 1;
    ramp->kept = kept;
    ramp->pieces[0] = (Piece){ -INFINITY, 0.0, value, value, 0.05 };
}

void read_plant(void)
{
    plant.ambient = number();
    plant.contents = whole();
    plant.dissolved = whole();
    plant.calcium = whole();
    plant.lime = whole();
    double kept = number();
    plant.tanks = whole();
    plant.tank = room_for(plant.tanks, sizeof(Tank));
    for (int index = 0; index < plant.tanks; index++) {
        Tank *tank = &plant.tank[index];
        tank->area = number();
        tank->overflow = number();
        tank->heel = number();
        tank->heat_loss = number();
        tank->lag = number();
        tank->unmixed_lag = number();
        tank->agitator = whole();
        tank->settler = -1;
    }
    plant.drives = whole();
    plant.drive = room_for(plant.drives, sizeof(Drive));
    for (int index = 0; index < plant.drives; index++) {
        plant.drive[index].travel = number();
        plant.drive[index].opens_without_power = whole();
        ready(&plant.drive[index].motion, plant.drive[index].opens_without_power ? 1.0 : 0.0, kept);
    }
    plant.sources = whole();
    plant.source = room_for(plant.sources, sizeof(Source));
    for (int index = 0; index < plant.sources; index++) {
        plant.source[index].celsius = number();
        plant.source[index].content = numbers(plant.contents);
    }
    plant.pipes = whole();
    plant.pipe = room_for(plant.pipes, sizeof(Pipe));
    for (int index = 0; index < plant.pipes; index++) {
        Pipe *pipe = &plant.pipe[index];
        pipe->from_tank = whole();
        pipe->from_source = whole();
        pipe->to_tank = whole();
        pipe->is_dosed = whole();
        pipe->dead_time = number();
        pipe->rate = number();
        pipe->bore = number();
        pipe->coefficient = number();
        pipe->through = whole();
        pipe->drives = wholes(pipe->through);
        pipe->not_through = whole();
        pipe->others = wholes(pipe->not_through);
        pipe->draw.metres = number();
        pipe->draw.from_surface = whole();
    }
    plant.drums = whole();
    plant.drum = room_for(plant.drums, sizeof(Drum));
    for (int index = 0; index < plant.drums; index++) {
        Drum *drum = &plant.drum[index];
        drum->trough = whole();
        drum->receiver = whole();
        drum->knife = whole();
        drum->motor = whole();
        drum->pump = whole();
        drum->aid = whole();
        drum->turn = number();
        drum->area = number();
        drum->submerged = number();
        drum->carry = number();
        drum->deepest = number();
        drum->bare = number();
        drum->lag = number();
        drum->falls = number();
        drum->cloth = number();
        drum->holds_back = number();
        drum->coat_permeability = number();
        drum->coat_density = number();
        drum->coat_grain = number();
        drum->closes = number();
        drum->cake_resistance = number();
        drum->cake_power = number();
        drum->cake_density = number();
        drum->cake_grain = number();
        drum->grams = numbers(plant.contents);
    }
    plant.settlers = whole();
    plant.settler = room_for(plant.settlers, sizeof(Settler));
    for (int index = 0; index < plant.settlers; index++) {
        Settler *settler = &plant.settler[index];
        settler->tank = whole();
        plant.tank[settler->tank].settler = index;
        settler->floc_density = number();
        settler->grain_density = number();
        settler->floc_size = number();
        settler->bed_density = number();
        settler->breaking = number();
        settler->watts = number();
        settler->grams = numbers(plant.contents);
    }
    plant.states = whole();
    plant.initial = numbers(plant.states);
    plant.tolerance = numbers(plant.states);
    for (int index = 0; index < plant.states; index++)
        if (plant.tolerance[index] < 0)
            plant.tolerance[index] = INFINITY;
    plant.scan = number();
    plant.seconds = number();
    plant.commands = whole();
    plant.command = room_for(plant.commands, sizeof(Command));
    for (int index = 0; index < plant.commands; index++) {
        plant.command[index].time = number();
        plant.command[index].drive = whole();
        plant.command[index].on = whole();
    }
    plant.drawn = room_for(plant.tanks, sizeof(double));
    plant.fed = room_for(plant.tanks, sizeof(double));
    plant.fed_next = room_for(plant.tanks, sizeof(double));
    plant.outside = room_for(plant.tanks, sizeof(double));
    plant.wanted = room_for(plant.pipes, sizeof(double));
    plant.wanted_by_drum = room_for(plant.drums, sizeof(double));
}
