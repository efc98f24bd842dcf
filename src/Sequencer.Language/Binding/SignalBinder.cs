using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>
/// One declaration each: inputs, reagents and parameters; outputs through <see cref="OutputBinder"/>. Where
/// only a part was wrong, the rest is still bound, so that its mistakes are found in the same pass.
/// </summary>
internal sealed class SignalBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly AddressBinder _addresses;
    private readonly OutputBinder _outputs;

    public SignalBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, AddressBinder addresses)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _addresses = addresses;
        _outputs = new OutputBinder(context, amounts, declarations, addresses);
    }

    public AnalogueInput? Bind(AnalogueInputSyntax syntax, LinePlace place)
    {
        DirectAddress address = _addresses.Bind(syntax.Address, 'I', "WD", place, "an input word such as `%IW0`");
        Duration badAfter = _amounts.TimeOrNothing(syntax.BadAfter, place) ?? default;
        Condition? usable = _declarations.Conditions.BindOptional(syntax.UsableWhile, place);
        if (_amounts.UnitOf(syntax.Unit, place) is not { } unit)
        {
            return null;
        }

        Rational resolution = Step(Math.Max(syntax.Minimum.Decimals, syntax.Maximum.Decimals), unit);
        Text.SourceSpan range = place.At(syntax.Minimum).Cover(place.At(syntax.Maximum));
        if (syntax.Minimum.Value >= syntax.Maximum.Value)
        {
            _context.Report(QuantityDiagnostics.EmptyRange(range));
            return null;
        }

        if (Steps(syntax.Minimum.Value * unit.Factor, resolution) is not { } low
            || Steps(syntax.Maximum.Value * unit.Factor, resolution) is not { } high
            || high - low > AmountBinder.LargestSpan)
        {
            _context.Report(QuantityDiagnostics.TooLarge(range, AmountText.Show(resolution, unit)));
            return null;
        }

        return new AnalogueInput(
            syntax.Name.Text, syntax.Description.Text, unit, resolution, low, high, address, badAfter, usable, place.At(syntax));
    }

    public SwitchInput Bind(SwitchInputSyntax syntax, LinePlace place) => new(
        syntax.Name.Text,
        syntax.Description.Text,
        syntax.NormallyClosed,
        _addresses.Bind(syntax.Address, 'I', "X", place, "an input bit such as `%IX0.3`"),
        _amounts.TimeOrNothing(syntax.OnAfter, place) ?? default,
        _amounts.TimeOrNothing(syntax.OffAfter, place) ?? default,
        place.At(syntax));

    public Output Bind(OutputSyntax syntax, Symbol symbol) => _outputs.Bind(syntax, symbol);

    public Reagent Bind(ReagentSyntax syntax, LinePlace place)
    {
        ImmutableArray<string>.Builder opposes = ImmutableArray.CreateBuilder<string>();
        foreach (WordSyntax word in syntax.Opposes)
        {
            if (word.Text == syntax.Name.Text)
            {
                _context.Report(NameDiagnostics.SelfOpposed(place.At(word), word.Text));
            }
            else if (_context.Symbols.Resolve(word, place, symbol => symbol.Kind == SymbolKind.Reagent, "a reagent") is { } other)
            {
                AddOnce(opposes, other.Name, word, place);
            }
        }

        AnalogueInput? signal = _declarations.ResolveReading(syntax.Signal, place);
        ReagentEffect? effect = signal is null ? null : syntax.Effect?.Text == "raises" ? ReagentEffect.Raises : ReagentEffect.Lowers;
        return new Reagent(syntax.Name.Text, syntax.Description?.Text ?? string.Empty, effect, signal, opposes.ToImmutable(), place.At(syntax));
    }

    public Parameter? Bind(ParameterSyntax syntax, LinePlace place)
    {
        if (syntax.Default.Unit is null || _amounts.UnitOf(syntax.Default.Unit, place) is not { } unit)
        {
            return null;
        }

        ImmutableArray<AmountSyntax> amounts = [syntax.Default, syntax.Minimum, syntax.Maximum];
        ImmutableArray<Rational?> values = [.. amounts.Select(amount => _amounts.Value(amount, unit.Dimension, place))];
        if (values is not [{ } value, { } low, { } high])
        {
            return null;
        }

        Text.SourceSpan range = place.At(syntax.Minimum).Cover(place.At(syntax.Maximum));
        if (low > high)
        {
            _context.Report(QuantityDiagnostics.EmptyRange(range));
            return null;
        }

        if (value < low || value > high)
        {
            _context.Report(QuantityDiagnostics.DefaultOutside(place.At(syntax.Default), $"{AmountText.Show(low, unit)} to {AmountText.Show(high, unit)}"));
            return null;
        }

        Rational resolution = amounts.Select(amount => Step(amount.Number.Decimals, UnitTable.Find(amount.Unit?.Text ?? string.Empty) ?? unit)).Aggregate(Rational.CommonMeasure);
        if (Steps(value, resolution) is not { } start || Steps(low, resolution) is not { } least || Steps(high, resolution) is not { } most)
        {
            _context.Report(QuantityDiagnostics.TooLarge(range, AmountText.Show(resolution, unit)));
            return null;
        }

        return new Parameter(syntax.Name.Text, syntax.Description?.Text ?? string.Empty, unit, resolution, start, least, most, place.At(syntax));
    }

    private void AddOnce(ImmutableArray<string>.Builder names, string name, WordSyntax word, LinePlace place)
    {
        if (names.Contains(name))
        {
            _context.Report(NameDiagnostics.ListedTwice(place.At(word), name));
        }
        else
        {
            names.Add(name);
        }
    }

    /// <summary>What the last written decimal stands for.</summary>
    private static Rational Step(int decimals, Unit unit) => unit.Factor / new Rational(System.Numerics.BigInteger.Pow(10, decimals), 1);

    /// <summary>How many steps; null where a DINT cannot hold them.</summary>
    private static long? Steps(Rational value, Rational resolution)
    {
        Rational steps = value / resolution;
        return steps.IsInteger && System.Numerics.BigInteger.Abs(steps.Numerator) <= int.MaxValue ? steps.ToInt64() : null;
    }
}
