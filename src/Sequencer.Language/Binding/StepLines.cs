using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What the lines of one step add up to; <c>limit</c> and <c>expect</c> stand there once.</summary>
internal sealed class StepLines
{
    private readonly BindingContext _context;
    private SourceSpan? _expectSpan;

    public StepLines(BindingContext context) => _context = context;

    public List<StepAction> Actions { get; } = [];

    public List<Claim> Claims { get; } = [];

    public List<Ask> Asks { get; } = [];

    public RestartPoint? RestartAt { get; private set; }

    public Duration? Expected { get; private set; }

    public StepLimit? Limit { get; private set; }

    /// <summary>The first <c>limit</c>, sound or not.</summary>
    public SourceSpan? LimitSpan { get; private set; }

    public void Add(StepAction? action)
    {
        if (action is not null)
        {
            Actions.Add(action);
        }
    }

    public void Add(Claim? claim)
    {
        if (claim is not null && Claims.Find(other => other.Equipment == claim.Equipment) is { } first)
        {
            _context.Report(StructureDiagnostics.OnlyOnce(claim.Span, "claim", first.Span));
        }
        else if (claim is not null)
        {
            Claims.Add(claim);
        }
    }

    public void Add(Ask? ask)
    {
        if (ask is not null && Asks.Find(other => other.Unit == ask.Unit) is { } first)
        {
            _context.Report(StructureDiagnostics.OnlyOnce(ask.Span, "ask", first.Span));
        }
        else if (ask is not null)
        {
            Asks.Add(ask);
        }
    }

    public void SetRestart(RestartPoint? point)
    {
        if (point is not null && RestartAt is { } first)
        {
            _context.Report(StructureDiagnostics.OnlyOnce(point.Span, "restart at step", first.Span));
        }

        RestartAt ??= point;
    }

    public void Expect(Duration? time, SourceSpan span)
    {
        if (_expectSpan is { } first)
        {
            _context.Report(StructureDiagnostics.OnlyOnce(span, "expect", first));
            return;
        }

        _expectSpan = span;
        Expected = time;
    }

    public void SetLimit(StepLimit? limit, SourceSpan span)
    {
        if (LimitSpan is { } first)
        {
            _context.Report(StructureDiagnostics.OnlyOnce(span, "limit", first));
            return;
        }

        LimitSpan = span;
        Limit = limit;
    }
}
