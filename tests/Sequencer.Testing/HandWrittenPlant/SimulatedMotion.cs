using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>The simulator's own motion of a plant through a script, without instruments and controller: as the hand-written program plays it.</summary>
public static class SimulatedMotion
{
    private const double SameTime = 1e-6;

    /// <summary>Every so many scans: the time, the state, and the pH of each tank; and the steps and equilibria that it took.</summary>
    public static (IReadOnlyList<double[]> States, long Steps, long Equilibria) Play(PlantModel model, MotionScript script, int everyScans)
    {
        PlantParts parts = new(model);
        PlantMotion motion = new(parts);
        ImmutableArray<Drive> drives = [.. script.Commands.Select(command => parts.Drive(command.Drive))];
        List<double[]> states = [];
        long scans = (long)Math.Round(script.Seconds / script.ScanSeconds);
        int due = 0;
        double ph = 0.0;
        for (long scan = 1; scan <= scans; scan++)
        {
            for (; due < drives.Length && script.Commands[due].Time <= motion.Time + SameTime; due++)
            {
                drives[due].Command(motion.Time, script.Commands[due].On);
                motion.Interrupt();
            }

            motion.AdvanceTo(motion.Time + script.ScanSeconds);
            for (int tank = 0; tank < parts.Tanks.Length; tank++)
            {
                ph = motion.Waters.Ph(tank);
            }

            if (scan % everyScans == 0)
            {
                states.Add([motion.Time, .. motion.Now, .. Enumerable.Range(0, parts.Tanks.Length).Select(motion.Waters.Ph)]);
            }
        }

        GC.KeepAlive(ph);
        return motion.Failure is null ? (states, motion.Steps, motion.Waters.EquilibriaSolved) : throw new InvalidOperationException($"{motion.Failure}");
    }
}
