namespace Sequencer.Language.Binding;

/// <summary>One unit's names and what stands behind them.</summary>
internal sealed record UnitNames(string Name, BindingContext Context, DeclarationBinder Declarations);
