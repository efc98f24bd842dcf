using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Writes a certificate from a system, a requirement, the assumptions leaned on and an invariant that
/// is already in SMT-LIB. Writer and checker share it: all but the invariant comes from the system.
/// </summary>
internal sealed class CertificateText
{
    private readonly CertifiedSystem _certified;
    private readonly ImmutableArray<Assumption> _leanedOn;
    private readonly ImmutableArray<SmtDefinition> _invariant;
    private readonly CertificateCone _cone;
    private readonly SmtTranslation _scan;

    /// <param name="certified">What the certificate is about.</param>
    /// <param name="leanedOn">Those of the system's assumptions that the proof needs.</param>
    /// <param name="invariant">Definitions over states; the last is <see cref="CertificateNames.Found"/>.</param>
    /// <param name="inInvariant">The states that the invariant reads.</param>
    public CertificateText(
        CertifiedSystem certified,
        ImmutableArray<Assumption> leanedOn,
        ImmutableArray<SmtDefinition> invariant,
        IReadOnlyList<Variable> inInvariant)
    {
        _certified = certified;
        _leanedOn = leanedOn;
        _invariant = invariant;
        Expression[] direct = [certified.Requirement.Holds, .. leanedOn.Select(assumption => assumption.Holds)];
        _cone = CertificateCone.Of(certified.System, inInvariant, direct);
        CertificateNames.Demand([.. _cone.Inputs, .. _cone.Before.Select(state => state.Variable)]);
        _scan = new SmtTranslation(
            [.. _cone.Stepped.Select(state => state.Next), .. direct],
            CertificateNames.Shared,
            CertificateNames.Known(certified.System));
    }

    public ImmutableArray<CertificateSection> Sections =>
    [
        new("the header", CertificateHeader.Write(_certified, _leanedOn)),
        new("the logic", "\n(set-logic QF_LIA)\n"),
        SmtText.Section("the inputs and their ranges", "inputs: free in every scan, within their ranges", _cone.Inputs.Select(SmtText.Input)),
        SmtText.Section("the states", "states before the scan: any value, unless the invariant says otherwise", _cone.Before.Select(state => SmtText.Declare(state.Variable))),
        SmtText.Section("the facts of a scan", "facts of the scan", _scan.Definitions.Select(SmtText.Define)),
        SmtText.Section("the next values of the states", "states after the scan", _cone.Stepped.Select(state => SmtText.Define(Next(state)))),
        SmtText.Section("the assumptions", "assumptions", Assumptions().Select(SmtText.Define)),
        SmtText.Section("the requirement", "requirement", [SmtText.Define(new SmtDefinition(CertificateNames.Required, Sort.Boolean, _scan.Term(_certified.Requirement.Holds)))]),
        SmtText.Section("the ranges of the states", "ranges of the states: part of the invariant, so proved", [SmtText.Define(Ranges())]),
        SmtText.Section("the invariant", "the invariant that was found", _invariant.Select(SmtText.Define)),
        SmtText.Section("the whole invariant", "the whole invariant", [SmtText.Define(Whole())]),
        SmtText.Section("the invariant after the scan", "the same after the scan", After().Select(SmtText.Define)),
        Obligation("1 initial: expect unsat", [.. _cone.Stepped.Select(SmtText.Begins), Not(CertificateNames.Invariant)]),
        Obligation("2 step: expect unsat", [SmtTerm.Name(CertificateNames.Invariant), SmtTerm.Name(CertificateNames.Assumed), Not($"{CertificateNames.Invariant}'")]),
        Obligation("3 requirement: expect unsat", [SmtTerm.Name(CertificateNames.Invariant), SmtTerm.Name(CertificateNames.Assumed), Not(CertificateNames.Required)]),
    ];

    public override string ToString() => string.Concat(Sections.Select(static section => section.Text));

    private static CertificateSection Obligation(string title, IEnumerable<SmtTerm> asserted) =>
        SmtText.Section("the obligations", title, ["(push 1)\n", .. asserted.Select(SmtText.Assert), "(check-sat)\n", "(pop 1)\n"]);

    private static SmtTerm Not(string name) => SmtTerm.Apply("not", SmtTerm.Name(name));

    private SmtDefinition Next(StateVariable state) =>
        new($"{state.Variable.Name}'", state.Variable.Sort, _scan.Term(state.Next));

    private IEnumerable<SmtDefinition> Assumptions()
    {
        ImmutableArray<SmtDefinition> each = [.. _leanedOn.Select((assumption, index) => new SmtDefinition(
            CertificateNames.Assumption + (index + 1).ToString(CultureInfo.InvariantCulture), Sort.Boolean, _scan.Term(assumption.Holds)))];
        SmtTerm all = SmtTerm.And([.. each.Select(static definition => SmtTerm.Name(definition.Name))]);
        return [.. each, new SmtDefinition(CertificateNames.Assumed, Sort.Boolean, all)];
    }

    private SmtDefinition Ranges() =>
        new(CertificateNames.Ranges, Sort.Boolean, SmtTerm.And([.. _cone.Ranged.Select(static state => SmtText.InRange(state.Variable))]));

    private static SmtDefinition Whole() => new(
        CertificateNames.Invariant,
        Sort.Boolean,
        SmtTerm.Apply("and", SmtTerm.Name(CertificateNames.Ranges), SmtTerm.Name(CertificateNames.Found)));

    private IEnumerable<SmtDefinition> After() =>
        [Ranges().Primed(), .. _invariant.Select(static definition => definition.Primed()), Whole().Primed()];
}
