namespace Sequencer.Sites.Tests.Variants;

/// <summary>A demo site's program with one thing broken.</summary>
/// <param name="Subject">What the changed line declares or does, as <c>interlock I3</c> or <c>step 20, limit</c>.</param>
/// <param name="Operator">The name of the operator that broke it.</param>
/// <param name="Change">What was written before and after.</param>
/// <param name="Line">The line's number in the unbroken program, from 1.</param>
/// <param name="Program">The whole text of the broken program.</param>
public sealed record Variant(string Subject, string Operator, string Change, int Line, string Program)
{
    public string Name => $"{Subject}: {Operator} {Change}";
}
