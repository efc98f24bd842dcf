using System.Collections.Immutable;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Records;

/// <summary>Follows a unit's batches: what its steps keep and what the operator answers, to the end of each batch.</summary>
internal sealed class BatchTracker
{
    private readonly UnitPlaces _unit;
    private readonly RecordMetadata[] _records;
    private readonly (PromptMetadata Prompt, ValueSource Answer)[] _prompts;
    private readonly long[] _answers;
    private readonly List<BatchEntry> _given = [];
    private readonly List<BatchClosing> _closed = [];
    private UnitState _state = UnitState.Idle;
    private long _began = -1;
    private ImmutableArray<LineLedger> _before = [];

    public BatchTracker(UnitPlaces unit, ClosedLoop loop)
    {
        _unit = unit;
        _records = [.. loop.Site.Records.Where(record => record.Unit == unit.Name)];
        _prompts =
        [
            .. loop.Site.Prompts.Where(prompt => prompt.Unit == unit.Name && loop.Find(prompt.Answer) is not null)
                .Select(prompt => (prompt, loop.Find(prompt.Answer) ?? throw new InvalidOperationException($"no {prompt.Answer}"))),
        ];
        _answers = new long[_prompts.Length];
    }

    /// <summary>What has to be looked at in each scan, beside the unit's state: where none of them has changed, nothing has to be observed.</summary>
    public IEnumerable<ValueSource> Watched => _prompts.Select(prompt => prompt.Answer);

    public void Observe(ClosedLoop loop)
    {
        UnitState now = (UnitState)loop.State(_unit.StatePlace);
        if (now == UnitState.Running && _began < 0)
        {
            _began = loop.ScanNumber;
            _before = Lines(loop);
            _given.Clear();
            Array.Clear(_answers);
        }

        Answers(loop);
        if (_began >= 0 && now is UnitState.Complete or UnitState.Stopped or UnitState.Aborted)
        {
            Close(loop, now, loop.ScanNumber);
        }

        _state = now;
    }

    /// <summary>All batches; the last one open where the run ended in it.</summary>
    public IEnumerable<BatchClosing> Finish(ClosedLoop loop)
    {
        if (_began >= 0)
        {
            Close(loop, _state, null);
        }

        return _closed;
    }

    private void Answers(ClosedLoop loop)
    {
        for (int index = 0; index < _prompts.Length; index++)
        {
            (PromptMetadata prompt, ValueSource source) = _prompts[index];
            long answer = (long)loop.Value(source);
            if (answer != _answers[index] && answer > 0 && _began >= 0)
            {
                _given.Add(new BatchEntry(prompt.Name, $"{prompt.Question} ({prompt.Role})", prompt.Answers[(int)answer - 1], loop.ScanNumber));
            }

            _answers[index] = answer;
        }
    }

    private void Close(ClosedLoop loop, UnitState state, long? scan)
    {
        ImmutableArray<BatchEntry> entries = [.. _records.Select(record => new BatchEntry(record.Step, record.Title, Kept(loop, record), null)), .. _given];
        _closed.Add(new BatchClosing(_unit.Name, _closed.Count + 1, _began, scan, state, entries) { Passed = Passed(loop) });
        _began = -1;
    }

    private ImmutableArray<LineLedger> Passed(ClosedLoop loop) =>
        [.. Lines(loop).Zip(_before, (now, before) => now with { Litres = now.Litres - before.Litres, SolidKilograms = now.SolidKilograms - before.SolidKilograms })];

    private static ImmutableArray<LineLedger> Lines(ClosedLoop loop)
    {
        loop.Plant.MeterSolids();
        return loop.Plant.Ledger().Lines;
    }

    private static string Kept(ClosedLoop loop, RecordMetadata record)
    {
        if (loop.Find(record.Variable) is not ValueSource value || loop.Find(record.Known) is not ValueSource known || loop.Value(known) == 0)
        {
            return "not recorded";
        }

        return ValueWords.Of(loop.Value(value), value.Decimals, value.Unit);
    }
}
