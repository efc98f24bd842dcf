using Sequencer.Plant.Description;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A tank so plain that its course can be written down: salt water, a salt reagent, no noise.</summary>
internal static class PlainTank
{
    public static PlantModel Model(string tank = "", string rest = "", string instruments = "", string lines = "") => RunningPlant.Model($$$"""
        plant: 1
        name: Plain tank
        ambient: 20 C
        supplies:
          water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
          hot: {temperature: 60 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
        reagents:
          BRINE: {dissolved: {nitrate: 2 mol/L, potassium: 2 mol/L}, temperature: 20 C, store: 50 L}
          STRONG: {dissolved: {sodium: 17.6 mol/L}, temperature: 20 C, store: 500 L}
        tanks:
          TK1: {area: 2 m2, overflow: 14 m3, heel: 1 L, starts: {volume: 2 L, water: water}, mixing: {agitator: AG1, dead_time: 6 s, lag: 10 s, unmixed_lag: 30 min}{{{tank}}} }
          TK2: {area: 1 m2, overflow: 3 m3, heel: 100 L, starts: {volume: 200 L, water: hot}, mixing: {dead_time: 1 s, lag: 5 s}}
        pumps:
          P1: {starts_in: 50 ms, running: YS1}
          P2: {starts_in: 50 ms}
          P3: {starts_in: 50 ms}
          P4: {starts_in: 50 ms}
          P5: {starts_in: 50 ms}
          P6: {starts_in: 50 ms}
          P7: {starts_in: 50 ms}
        agitators:
          AG1: {starts_in: 1 s, running: YSA1}
        valves:
          XV1: {travel: 4 s, open_switch: ZSO1, closed_switch: ZSC1}
        lines:
          fill: {from: water, to: TK1, rate: 8 m3/h, through: [P1]}
          warm: {from: hot, to: TK1, rate: 8 m3/h, through: [P5]}
          brine: {from: BRINE, to: TK1, rate: 60 L/h, through: [P2]}
          strong: {from: STRONG, to: TK1, rate: 60 L/h, through: [P3]}
          empty: {from: TK1, to: sewer, rate: 16 m3/h, through: [P4]}
          onward: {from: TK1, to: TK2, rate: 6 m3/h, through: [P6]}
          back: {from: TK2, to: TK1, rate: 3 m3/h, through: [P7]}
          drain: {from: TK1, to: sewer, outlet: {bore: 50 mm, coefficient: 0.6}, through: [XV1]}
        {{{lines}}}
        transmitters:
          LT1: {measures: volume, in: TK1, low: 0 m3, high: 16 m3, lag: 2 s}
          AT1: {measures: pH, in: TK1, low: 0 pH, high: 14 pH}
          {{{instruments}}}
        switches:
          LSH1: {measures: volume, in: TK1, above: 12 m3, hysteresis: 0.5 m3, normally_closed: yes}
        {{{rest}}}
        """);
}
