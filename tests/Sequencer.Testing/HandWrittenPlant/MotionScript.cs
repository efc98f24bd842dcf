using System.Collections.Immutable;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>What a plant's drives are told, in order of time, without a controller.</summary>
/// <param name="ScanSeconds">From one reading of the plant to the next.</param>
/// <param name="Seconds">How long it goes on.</param>
/// <param name="Commands">When, which drive by its tag, and whether it is energised.</param>
public sealed record MotionScript(double ScanSeconds, double Seconds, ImmutableArray<(double Time, string Drive, bool On)> Commands)
{
    private const double HoursOfRound = 2.0;

    /// <summary>
    /// The drives of drum-filter.yaml: a coat is mixed, laid and cut smooth, then dirty water is filtered with the knife on its way; in the end the vacuum is lost and the coat falls.
    /// </summary>
    public static MotionScript Filtration()
    {
        List<(double Time, string Drive, bool On)> all = [];
        Add(0.0, "XV210", 700.0);
        Add(0.0, "AG210", 6000.0);
        Add(0.0, "AG201", 12_000.0);
        Add(100.0, "XV227", 300.0);
        Add(300.0, "M224", 90.0);
        Add(600.0, "M221", 7000.0);
        Add(610.0, "VP220", 6490.0);
        Add(710.0, "M211", 1500.0);
        Add(720.0, "P210", 4000.0);
        Add(720.0, "P230", 6900.0);
        Add(720.0, "XV234", 4100.0);
        Add(4900.0, "XV233", 2700.0);
        Add(5000.0, "XV207", 2000.0);
        Add(5000.0, "XV208", 2000.0);
        Add(5005.0, "P207", 1990.0);
        Add(5300.0, "M223", 80.0);
        for (double at = 5600.0; at < 6900.0; at += 90.0)
        {
            Add(at, "M223", 1.0);
        }

        return new MotionScript(0.1, 7500.0, [.. all.OrderBy(command => command.Time)]);

        void Add(double at, string drive, double lasts) => all.AddRange([(at, drive, true), (at + lasts, drive, false)]);
    }

    /// <summary>
    /// The drives of settling.yaml: water is stirred and comes in, its flocs settle, it is drawn off above and below, stirred up, and in the end comes in until it runs over while it settles.
    /// </summary>
    public static MotionScript Settling()
    {
        (string Drive, double At, double Lasts)[] all =
        [
            ("P3", 10.0, 700.0), ("AG1", 60.0, 2340.0), ("P1", 4200.0, 700.0), ("P2", 5000.0, 200.0), ("AG1", 5400.0, 900.0), ("P2", 7000.0, 500.0), ("P3", 6300.0, 1700.0),
        ];
        return new MotionScript(0.1, 9000.0, [.. all.SelectMany(one => new[] { (one.At, one.Drive, true), (one.At + one.Lasts, one.Drive, false) }).OrderBy(command => command.Item1)]);
    }

    /// <summary>
    /// Fernhollow's drives for some hours, over and over: a pit fills and is dosed with caustic and acid, is drawn down to its heel while the
    /// other fills and is dosed.
    /// </summary>
    public static MotionScript Fernhollow(double hours)
    {
        List<(double Time, string Drive, bool On)> all = [];
        for (double start = 0.0; start < hours; start += HoursOfRound)
        {
            double at = start * 3600.0;
            Add(at, 0.0, "AG301", 3600.0);
            Add(at, 0.0, "AG302", 7200.0);
            Pulses(at, 1200.0, "P304", "XV311B", 12, 120.0, 60.0);
            Pulses(at, 2700.0, "P303", "XV311A", 4, 90.0, 5.0);
            Add(at, 3600.0, "XV300", 3600.0);
            Add(at, 3650.0, "XV321", 700.0);
            Add(at, 3655.0, "P320A", 690.0);
            Pulses(at, 4800.0, "P304", "XV312B", 15, 120.0, 40.0);
            Add(at, 6650.0, "XV322", 500.0);
            Add(at, 6655.0, "P320B", 490.0);
        }

        return new MotionScript(0.1, hours * 3600.0, [.. all.OrderBy(command => command.Time)]);

        void Add(double at, double after, string drive, double lasts) => all.AddRange([(at + after, drive, true), (at + after + lasts, drive, false)]);

        void Pulses(double at, double after, string pump, string valve, int count, double every, double lasts)
        {
            for (int pulse = 0; pulse < count; pulse++)
            {
                Add(at, after + (pulse * every), valve, lasts + 2.0);
                Add(at, after + (pulse * every) + 1.0, pump, lasts);
            }
        }
    }
}
