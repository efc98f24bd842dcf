namespace Sequencer.Benchmarks;

/// <summary>What a programmer would write by hand for a <see cref="BatchPlant"/>: the outside baseline.</summary>
internal sealed class HandWrittenPlant
{
    private readonly Unit[] _units;

    public HandWrittenPlant(int units)
    {
        _units = [.. Enumerable.Range(0, units).Select(_ => new Unit())];
        Inputs = new long[units * BatchPlant.InputsOfUnit];
        Outputs = new long[units * 2];
    }

    public long[] Inputs { get; }

    public long[] Outputs { get; }

    public long Total(int unit) => _units[unit].Total;

    public void Step()
    {
        for (int unit = 0; unit < _units.Length; unit++)
        {
            int at = unit * BatchPlant.InputsOfUnit;
            _units[unit].Step(Inputs[at] != 0, Inputs[at + 1] != 0, Inputs[at + 2]);
            Outputs[2 * unit] = _units[unit].Pump ? 1 : 0;
            Outputs[(2 * unit) + 1] = _units[unit].Valve ? 1 : 0;
        }
    }

    private sealed class Unit
    {
        private readonly bool[] _active = new bool[BatchPlant.Steps];
        private readonly long[] _clock = new long[BatchPlant.Steps];
        private bool _tripped;

        public long Total { get; private set; }

        public bool Pump { get; private set; }

        public bool Valve { get; private set; }

        public void Step(bool start, bool abort, long level)
        {
            bool trip = abort || (_tripped && !start);
            bool begins = start && !Array.Exists(_active, static active => active);
            Pump = (_active[2] || _active[5]) && !trip && level < BatchPlant.HighLevel;
            Valve = _active[1] && !trip;
            Total = begins ? 0 : Pump ? Math.Min(BatchPlant.LargestTotal, Total + 3) : Total;
            _tripped = trip;
            bool enters = begins;
            for (int step = 0; step < BatchPlant.Steps; step++)
            {
                bool active = _active[step];
                bool clears = active && _clock[step] >= BatchPlant.LimitOf(step) && level > BatchPlant.LevelOf(step);
                bool stays = active && !clears;
                _clock[step] = stays && !trip ? Math.Min(BatchPlant.LongestClock, _clock[step] + 1) : 0;
                _active[step] = !trip && (stays || enters);
                enters = clears;
            }
        }
    }
}
