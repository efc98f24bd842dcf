using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Sites.Recipes;

/// <summary>Values for parameters of the site's programs, under a name; a parameter that it does not name has its default.</summary>
public sealed record Recipe(string Name, string Purpose, ImmutableArray<RecipeValue> Values, SourceSpan Span);
