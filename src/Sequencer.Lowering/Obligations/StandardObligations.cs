using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>
/// What every unit owes without being asked (<c>spec/obligations.md</c>). They are requirements like the author's: proved,
/// certified, and about the same scan.
/// </summary>
internal static class StandardObligations
{
    public static void Add(UnitScan scan)
    {
        OutputsAtRest.Add(scan);
        TripsAct.Add(scan);
        TimeInStates.Add(scan);
        ReagentLimits.Add(scan);
        Require(
            scan, "memory", "the watch over memory acts on nothing but memory that was changed from outside", $"The watch over the memory of {scan.Unit.Name} never acts by itself",
            $"never what {scan.Unit.Name} keeps twice of its state and steps differs", RequirementKind.Never, scan.Build.Not(scan.Watch.Latched), new Origin(scan.Unit.Span));
    }

    /// <summary>One case of an obligation of the unit; <paramref name="name"/> is below the unit's own.</summary>
    public static void Require(
        UnitScan scan, string name, string words, string title, string statement, RequirementKind kind, Expression holds, Origin origin,
        params ReadOnlySpan<Expression> guesses) =>
        scan.System.Require(new Requirement(scan.Named(name), title, statement, kind, holds, origin)
        {
            Obligation = new StandardObligation(scan.Unit.Name, words),
            Guesses = [.. guesses],
        });

    /// <summary>
    /// For how many scans in a row the fact has been true before this one, up to the bound: in this scan, where
    /// <paramref name="goesOn"/>, else it begins anew; and as it is stored.
    /// </summary>
    public static (Expression Before, Expression Stored) ScansInARow(UnitScan scan, string name, Expression fact, Expression goesOn, long bound, Origin origin)
    {
        DeclaredState age = scan.System.State(scan.Named(name), new IntegerRange(0, bound), 0, retained: false, StatePurpose.Monitor, origin);
        Expression before = scan.Build.IfThenElse(goesOn, age.Current, scan.Build.Constant(0));
        age.Next = scan.Build.IfThenElse(fact, Clocks.UpTo(scan.Build, before, bound), scan.Build.Constant(0));
        return (before, age.Stored);
    }

    public static string State(UnitScan scan, ProceduralState state) => $"{scan.Unit.Name} is {state}";
}
