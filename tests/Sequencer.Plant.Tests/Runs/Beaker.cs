namespace Sequencer.Plant.Tests.Runs;

/// <summary>A covered, well stirred tank of 100 L at 25 C: a sample is given into its water, and then a titrant until it has a pH.</summary>
internal sealed class Beaker
{
    /// <summary>Of both pumps that are not slow; the slow one brings a hundredth of it.</summary>
    private const double SwiftLitresPerSecond = 0.02;

    private const string Salt = "{temperature: 25 C, pH: 7.0, balanced_by: nitrate, dissolved: {sodium: 1 mmol/L}}";

    /// <param name="sample">What a litre of the sample holds.</param>
    /// <param name="titrant">What a litre of the titrant holds, as a reagent says it.</param>
    /// <param name="solids">What falls out at once.</param>
    /// <param name="water">What is in the tank at the start.</param>
    public Beaker(string sample, string titrant, string solids = "", string water = Salt) => Plant = RunningPlant.Start(RunningPlant.Model($$$"""
        plant: 1
        name: Beaker
        ambient: 25 C
        chemistry: {precipitates: [{{{solids}}}]}
        supplies:
          water: {{{water}}}
        reagents:
          SAMPLE: {dissolved: {{{sample}}}, temperature: 25 C, store: 50 L}
          TITRANT: {{{{titrant}}}, temperature: 25 C, store: 50 L}
        tanks:
          TK1: {area: 0.1 m2, overflow: 150 L, heel: 0.1 L, starts: {volume: 100 L, water: water}, mixing: {dead_time: 0 s, lag: 0.5 s}}
        pumps: {P1: {starts_in: 50 ms}, P2: {starts_in: 50 ms}, P3: {starts_in: 50 ms}}
        lines:
          sample: {from: SAMPLE, to: TK1, rate: 72 L/h, through: [P1]}
          swift: {from: TITRANT, to: TK1, rate: 72 L/h, through: [P2]}
          slow: {from: TITRANT, to: TK1, rate: 0.72 L/h, through: [P3]}
        """));

    public RunningPlant Plant { get; }

    public double Ph => Plant.Quantity("TK1.pH");

    public double SampleLitres => Plant.Total("SAMPLE.used");

    public double TitrantLitres => Plant.Total("TITRANT.used");

    /// <summary>kg of solids that have formed.</summary>
    public double PrecipitateKilograms => Plant.Quantity("TK1.precipitate") * Plant.Quantity("TK1.volume") * 1e-3;

    /// <summary>So many litres of the sample, and a minute to mix and react.</summary>
    public Beaker Given(double litres)
    {
        Pump("P1", litres);
        Wait(60.0);
        return this;
    }

    /// <summary>Titrant, most of it at once and then slowly until the pH has risen to what is wanted; the whole of it in litres.</summary>
    public double TitratedTo(double ph, double expectedLitres)
    {
        Pump("P2", 0.97 * expectedLitres);
        Wait(10.0);
        Assert.True(Ph < ph, FormattableString.Invariant($"pH {Ph} after {TitrantLitres} L"));
        Plant.Command(true, "P3");
        while (Ph < ph)
        {
            Assert.True(TitrantLitres < 1.1 * expectedLitres, FormattableString.Invariant($"pH {Ph} after {TitrantLitres} L"));
            Wait(0.5);
        }

        Plant.Command(false, "P3");
        Wait(5.0);
        return TitrantLitres;
    }

    public void Wait(double seconds)
    {
        Plant.Plant.Advance(seconds);
        Assert.Null(Plant.Plant.Failure);
    }

    private void Pump(string pump, double litres)
    {
        Plant.Command(true, pump);
        Wait(litres / SwiftLitresPerSecond);
        Plant.Command(false, pump);
    }
}
