using System.Collections.Immutable;

namespace Sequencer.Spec.Tests.Grammar;

/// <summary>A piece of a production in extended Backus-Naur form (ISO/IEC 14977, with "," left out between terms where it likes).</summary>
internal abstract record GrammarNode
{
    /// <param name="Words">The words or signs of one quoted terminal, one token each.</param>
    internal sealed record Terminal(ImmutableArray<string> Words) : GrammarNode;

    /// <summary>A production's name, or a class of tokens that the text of the page describes (<c>name</c>, <c>number</c>).</summary>
    internal sealed record Reference(string Name) : GrammarNode;

    internal sealed record Sequence(ImmutableArray<GrammarNode> Parts) : GrammarNode;

    internal sealed record Choice(ImmutableArray<GrammarNode> Ways) : GrammarNode;

    internal sealed record Maybe(GrammarNode Inner) : GrammarNode;

    internal sealed record Repeated(GrammarNode Inner) : GrammarNode;
}
