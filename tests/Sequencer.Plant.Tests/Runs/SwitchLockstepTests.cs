using Sequencer.Plant.Description;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>
/// A controller sees contacts at its scans only: on steps far longer than a scan a switch turns in the same scan as on steps of a tenth of one.
/// </summary>
public sealed class SwitchLockstepTests
{
    private const int LooksInAScan = 10;
    private const int Scans = 15_000;

    /// <summary>pH and conductivity are followed in pieces that may be off by 0.003 (pH, or share) in their middle: so many scans at the slowest pace here.</summary>
    private const int WaterScans = 4;

    /// <summary>Volumes, temperatures, pH and conductivities that a batch passes, at thresholds that hang together with nothing.</summary>
    private static readonly string[] Switches =
    [
        .. Enumerable.Range(1, 12).Select(number => FormattableString.Invariant($"LSH1{number}: {{measures: volume, in: TK1, above: {0.0371 + (number * 0.1173)} m3, hysteresis: 3 L}}")),
        .. Enumerable.Range(1, 12).Select(number => FormattableString.Invariant($"LSL2{number}: {{measures: volume, in: TK2, below: {0.0999 + (number * 0.0137)} m3, hysteresis: 1 L}}")),
        .. Enumerable.Range(1, 8).Select(number => FormattableString.Invariant($"TSH1{number}: {{measures: temperature, in: TK1, above: {21.7 + (number * 2.31)} C, hysteresis: 0.3 C}}")),
        .. Enumerable.Range(1, 8).Select(number => FormattableString.Invariant($"ASH1{number}: {{measures: pH, in: TK1, above: {7.13 + (number * 0.57)} pH}}")),
        .. Enumerable.Range(1, 6).Select(number => FormattableString.Invariant($"CSH1{number}: {{measures: conductivity, in: TK1, above: {1.07 + (number * 0.613)} mS/cm}}")),
        "FSL7: {measures: flow, in: back, below: 0.4 L/s, hysteresis: 0.1 L/s}",
        "PSL7: {measures: pressure, in: P7, at_full_speed: 2 bar, below: 1 bar}",
    ];

    private static readonly PlantModel Model = PlainTank.Model(rest: string.Concat(Switches.Select(line => $"  {line}\n")));

    [Fact]
    public void A_switch_turns_in_the_scan_in_which_much_finer_steps_turn_it()
    {
        (List<(string Contact, int Scan)> longSteps, long few) = Play(1);
        (List<(string Contact, int Scan)> fineSteps, long many) = Play(LooksInAScan);
        Assert.True(many > Scans * (LooksInAScan - 1) && few < Scans, $"{few} steps are not long, or {many} are not fine");
        Assert.True(longSteps.Count > 45, $"only {longSteps.Count} contacts turned");
        Assert.Equal(fineSteps.Where(turn => !IsOfWater(turn)).Order(), longSteps.Where(turn => !IsOfWater(turn)).Order());
        (string Contact, int Scan)[] ofWater = [.. fineSteps.Where(IsOfWater).Order()];
        (string Contact, int Scan)[] ofWaterOnLongSteps = [.. longSteps.Where(IsOfWater).Order()];
        Assert.Equal(ofWater.Select(turn => turn.Contact), ofWaterOnLongSteps.Select(turn => turn.Contact));
        Assert.All(ofWater.Zip(ofWaterOnLongSteps), turns => Assert.InRange(turns.Second.Scan, turns.First.Scan - WaterScans, turns.First.Scan + WaterScans));
    }

    private static bool IsOfWater((string Contact, int Scan) turn) => turn.Contact.StartsWith("ASH", StringComparison.Ordinal) || turn.Contact.StartsWith("CSH", StringComparison.Ordinal);

    /// <summary>Each contact that turned, and the scan that sees it. Where a scan is looked into, something begins to change at each look: no step goes beyond it.</summary>
    private static (List<(string Contact, int Scan)> Turned, long Steps) Play(int looks)
    {
        RunningPlant running = RunningPlant.Start(Model);
        IPlant plant = running.Plant;
        int disturbance = plant.Faults.Select(fault => fault.Name).ToList().IndexOf("LT1.misscaled");
        bool[] made = [.. plant.Contacts.Select((_, contact) => plant.Contact(contact))];
        List<(string Contact, int Scan)> turned = [];
        for (int scan = 1; scan <= Scans; scan++)
        {
            Command(running, scan);
            for (int look = 1; look <= looks; look++)
            {
                Disturb(plant, disturbance, looks > 1, look);
                plant.Advance((RunningPlant.ScanSeconds * (scan - 1 + ((double)look / looks))) - plant.Time);
                for (int contact = 0; contact < made.Length; contact++)
                {
                    if (plant.Contact(contact) != made[contact])
                    {
                        made[contact] = !made[contact];
                        turned.Add((plant.Contacts[contact], scan));
                    }
                }
            }
        }

        Assert.Null(plant.Failure);
        return (turned, ((PlantRun)plant).Effort.Steps);
    }

    private static void Disturb(IPlant plant, int fault, bool isWanted, int look)
    {
        if (isWanted && look % 2 == 0)
        {
            plant.Clear(fault);
        }
        else if (isWanted)
        {
            plant.Inject(fault);
        }
    }

    /// <summary>Filled cold and then warm too, made alkaline, the other tank emptied to its heel.</summary>
    private static void Command(RunningPlant plant, int scan)
    {
        (string Tag, int From, int To)[] script = [("AG1", 1, Scans), ("P1", 1, 5000), ("P7", 1, 4000), ("P5", 1500, 6500), ("P3", 3000, 9000), ("P4", 9000, 12_000)];
        foreach ((string tag, int from, int to) in script.Where(one => one.From == scan || one.To == scan))
        {
            plant.Command(scan == from, tag);
        }
    }
}
