using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>What every part of one lowering shares.</summary>
internal sealed class LoweringContext
{
    /// <summary>The most statements of one scan, loops and calls unrolled.</summary>
    public const int MostStatements = 200_000;

    /// <summary>The most expressions of one system.</summary>
    public const int MostExpressions = 4_000_000;

    /// <summary>How deep calls of blocks and functions may nest.</summary>
    public const int DeepestCall = 50;

    private int _statements;

    public LoweringContext(DiagnosticBag diagnostics, int scanMilliseconds, CancellationToken cancellation)
    {
        Diagnostics = diagnostics;
        ScanMilliseconds = scanMilliseconds;
        Cancellation = cancellation;
        Builder = new ExpressionBuilder();
        Units = new Dictionary<string, UnitSyntax>(StringComparer.OrdinalIgnoreCase);
        Globals = new Dictionary<string, Member>(StringComparer.OrdinalIgnoreCase);
        Unread = Builder.Variable(new Variable("unread", VariableRole.Input, int.MaxValue, Sort.Boolean, IntegerRange.Boolean));
        Types = new TypeTable(diagnostics)
        {
            ConstantValue = ConstantValue,
            FirstValues = (syntax, type) => Lowering.FirstValues.Of(this, syntax, type, null),
        };
    }

    public ExpressionBuilder Builder { get; }

    public DiagnosticBag Diagnostics { get; private set; }

    /// <summary>Whether what is found is not for telling.</summary>
    public bool IsQuiet { get; private set; }

    public int ScanMilliseconds { get; }

    public CancellationToken Cancellation { get; }

    public TypeTable Types { get; }

    /// <summary>Functions and function blocks, standard ones too, by name.</summary>
    public Dictionary<string, UnitSyntax> Units { get; }

    public Dictionary<string, Member> Globals { get; }

    /// <summary>Every slot that lasts longer than a call, in the order of declaration.</summary>
    public List<Slot> Slots { get; } = [];

    /// <summary>Every block instance below the program.</summary>
    public List<BlockInstance> Instances { get; } = [];

    /// <summary>Timers whose preset is the initial one, which nothing may then assign.</summary>
    public List<(BlockInstance Timer, SourceSpan Call)> InitialPresets { get; } = [];

    /// <summary>The programs, blocks and functions whose bodies were run.</summary>
    public HashSet<UnitSyntax> Reached { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>Stands for a condition that could not be read, so that what depends on it is still checked.</summary>
    public Expression Unread { get; }

    public bool IsExhausted { get; private set; }

    /// <summary>Counts one more statement; false when there have been too many.</summary>
    public bool Spend(SourceSpan span)
    {
        Cancellation.ThrowIfCancellationRequested();
        if (!IsExhausted && (++_statements > MostStatements || Builder.Count > MostExpressions))
        {
            IsExhausted = true;
            Diagnostics.Add(StructuredTextDiagnostics.TooLarge(span, _statements > MostStatements ? MostStatements : MostExpressions));
        }

        return !IsExhausted;
    }

    /// <summary>Works something out a second time, in another light: what is wrong with it is told elsewhere.</summary>
    public T Quietly<T>(Func<T> work)
    {
        DiagnosticBag told = Diagnostics;
        bool isQuiet = IsQuiet;
        (Diagnostics, IsQuiet) = (new DiagnosticBag(), true);
        try
        {
            return work();
        }
        finally
        {
            (Diagnostics, IsQuiet) = (told, isQuiet);
        }
    }

    /// <summary>The number behind an expression of literals and global constants, else a report.</summary>
    private long? ConstantValue(ExpressionSyntax syntax) => new ExpressionLowering(this).Constant(syntax, null)?.Value.Value;
}
