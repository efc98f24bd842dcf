using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Writes a certificate that asks part by part: some parts of the invariant or of the requirement in each question, with what of the scan and of
/// the invariant can matter to them. A state that the invariant gives by others is defined by them. The facts of a scan are
/// declared and equated, since one of the solvers takes far longer for the same text with thousands of definitions.
/// </summary>
internal sealed class PartwiseText
{
    private const int ClaimsInQuestion = 24;

    private readonly TransitionSystem _system;
    private readonly Requirement _requirement;
    private readonly ImmutableArray<InvariantPart> _parts;
    private readonly CertificateCone _cone;
    private readonly Dictionary<Expression, string> _known;
    private readonly HashSet<Variable> _given;
    private readonly RelevantParts _relevant;

    /// <param name="system">What the certificate is about; its assumptions are not used.</param>
    /// <param name="requirement">One of the system's requirements.</param>
    /// <param name="parts">The invariant.</param>
    public PartwiseText(TransitionSystem system, Requirement requirement, ImmutableArray<InvariantPart> parts)
    {
        _system = system;
        _requirement = requirement;
        _parts = parts;
        _given = [.. parts.Select(part => part.Given).OfType<Variable>()];
        Variable[] inInvariant = [.. _given.Concat(parts.SelectMany(part => part.Reads)).Distinct()];
        _cone = CertificateCone.Of(system, inInvariant, [requirement.Holds]);
        CertificateNames.Demand([.. _cone.Inputs, .. _cone.Before.Select(state => state.Variable)]);
        _known = CertificateNames.Known(system);
        _relevant = new RelevantParts(parts, _cone.Ranged.Select(state => (state.Variable, SmtText.InRange(state.Variable))));
        Questions = [.. Near(Ranges()).Chunk(ClaimsInQuestion), .. Near(parts.Select(CertificateClaim.Of)).Chunk(ClaimsInQuestion), .. Required().Chunk(ClaimsInQuestion)];
    }

    /// <summary>What is asked of a scan, question by question.</summary>
    public ImmutableArray<CertificateClaim[]> Questions { get; }

    public ImmutableArray<CertificateSection> Sections =>
    [
        new("the header", CertificateHeader.WriteByParts(_system, _requirement, Questions.Length + 1)),
        new("the logic", "\n(set-logic QF_LIA)\n"),
        SmtText.Section("the inputs and their ranges", "inputs: free in every scan, within their ranges", _cone.Inputs.Select(SmtText.Input)),
        SmtText.Section(
            "the states", "states before the scan: any value, unless the invariant says otherwise",
            _cone.Before.Where(state => !_given.Contains(state.Variable)).Select(state => SmtText.Declare(state.Variable))),
        SmtText.Section("the invariant", "the invariant that was found: states that it gives by others, and facts", _parts.SelectMany(Definitions).Select(SmtText.Define)),
        Question("the first obligation", "1 initial: expect unsat", [.. Initial()]),
        .. Questions.Select((claims, index) => Question(
            "the obligations",
            FormattableString.Invariant($"{(claims[0].Now is null ? "2 step" : "3 requirement")}, question {index + 2} of {Questions.Length + 1}: expect unsat"),
            [.. Asked(claims)])),
    ];

    public override string ToString() => string.Concat(Sections.Select(static section => section.Text));

    /// <summary>What is of one unit stands in one question, so that less of the scan is said twice.</summary>
    private static IEnumerable<CertificateClaim> Near(IEnumerable<CertificateClaim> claims) => claims.OrderBy(claim => claim.Stepped.FirstOrDefault()?.Name, StringComparer.Ordinal);

    private static IEnumerable<SmtDefinition> Definitions(InvariantPart part) => [.. part.Shared, part.Whole];

    private static CertificateSection Question(string holds, string title, IEnumerable<string> lines) =>
        SmtText.Section(holds, title, ["(push 1)\n", .. lines, "(check-sat)\n", "(pop 1)\n"]);

    private IEnumerable<CertificateClaim> Ranges() =>
        _cone.Ranged.Select(state => new CertificateClaim([state.Variable], [], SmtText.InRange(state.Variable).Primed(), null));

    private IEnumerable<CertificateClaim> Required() =>
        (_requirement.Holds.Kind == ExpressionKind.And ? _requirement.Holds.Operands : [_requirement.Holds]).Select(part => new CertificateClaim([], [], null, part));

    /// <summary>The free states begin as they do; a given state must then begin as it is given.</summary>
    private IEnumerable<string> Initial()
    {
        ILookup<bool, StateVariable> begins = _cone.Stepped.ToLookup(state => _given.Contains(state.Variable));
        ImmutableArray<SmtTerm> inside =
        [
            .. _cone.Ranged.Select(state => SmtText.InRange(state.Variable)),
            .. begins[true].Select(SmtText.Begins),
            .. _parts.Where(static part => part.Given is null).Select(part => SmtTerm.Name(part.Whole.Name)),
        ];
        return [.. begins[false].Select(state => SmtText.Assert(SmtText.Begins(state))), SmtText.Assert(SmtTerm.Apply("not", SmtTerm.And(inside)))];
    }

    private IEnumerable<string> Asked(CertificateClaim[] claims)
    {
        StateVariable[] stepped = [.. claims.SelectMany(claim => claim.Stepped).Distinct().OrderBy(state => state.Index).Select(state => _system.States[state.Index])];
        Expression[] roots = [.. stepped.Select(state => state.Next), .. claims.Select(claim => claim.Now).OfType<Expression>()];
        SmtTranslation scan = new(roots, CertificateNames.Shared, _known);
        IEnumerable<SmtDefinition> next = stepped.Select(state => new SmtDefinition($"{state.Variable.Name}'", state.Variable.Sort, scan.Term(state.Next)));
        return
        [
            .. scan.Definitions.Concat(next).Select(SmtText.Equate),
            .. _relevant.To(ExpressionGraph.Variables(roots)).Select(SmtText.Assert),
            .. claims.SelectMany(claim => claim.Shared).Select(SmtText.Define),
            SmtText.Assert(SmtTerm.Apply("not", SmtTerm.And([.. claims.Select(claim => claim.After ?? scan.Term(claim.Now!))]))),
        ];
    }
}
