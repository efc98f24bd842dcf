using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Valves and motors: their rest values, what confirms them, what they deliver.</summary>
internal sealed class OutputBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly AddressBinder _addresses;

    public OutputBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, AddressBinder addresses)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _addresses = addresses;
    }

    public Output Bind(OutputSyntax syntax, Symbol symbol)
    {
        LinePlace place = symbol.Place;
        DirectAddress address = _addresses.Bind(syntax.Address, 'Q', "X", place, "an output bit such as `%QX0.3`");
        RestValue safe = Rest(syntax.Safe, symbol);
        RestValue emergency = syntax.Emergency is null ? safe : Rest(syntax.Emergency, symbol);
        RestValue? held = syntax.Held is null ? null : Rest(syntax.Held, symbol);
        bool deEnergised = syntax.DeEnergised is { } position && DeviceWords.Fits(_context, symbol, position, place) && DeviceWords.MeansOn(position);
        return new Output(
            syntax.Name.Text,
            syntax.Description.Text,
            symbol.Kind == SymbolKind.Valve ? OutputKind.Valve : OutputKind.Motor,
            address,
            safe,
            emergency,
            held,
            Driven(syntax.Driven, place),
            deEnergised,
            syntax.Confirm is null ? null : Confirm(syntax.Confirm, symbol),
            syntax.Delivers is null ? null : Delivers(syntax.Delivers, place),
            place.At(syntax));
    }

    private ImmutableArray<ProceduralState> Driven(DrivenSyntax? syntax, LinePlace place)
    {
        ImmutableArray<ProceduralState>.Builder states = ImmutableArray.CreateBuilder<ProceduralState>();
        foreach (WordSyntax word in syntax?.Sections ?? [])
        {
            ProceduralState state = Sections.Of(word.Text);
            if (states.Contains(state))
            {
                _context.Report(NameDiagnostics.ListedTwice(place.At(word), word.Text));
            }

            states.Add(state);
        }

        return states.ToImmutable();
    }

    private RestValue Rest(RestSyntax syntax, Symbol symbol)
    {
        LinePlace place = symbol.Place;
        if (syntax.Position.Text == "last")
        {
            return new RestValue(true, false, null, false, false, place.At(syntax));
        }

        DeviceWords.Fits(_context, symbol, syntax.Position, place);
        bool value = DeviceWords.MeansOn(syntax.Position);
        if (syntax.While is null)
        {
            return new RestValue(false, value, null, value, value, place.At(syntax));
        }

        bool otherwise = Position(syntax.Else, symbol) ?? !value;
        bool bad = Position(syntax.IfBad, symbol) ?? otherwise;
        return new RestValue(false, value, _declarations.Conditions.BindOptional(syntax.While, place), otherwise, bad, place.At(syntax));
    }

    private bool? Position(WordSyntax? word, Symbol symbol)
    {
        DeviceWords.Fits(_context, symbol, word, symbol.Place);
        return word is null ? null : DeviceWords.MeansOn(word);
    }

    private Confirmation? Confirm(ConfirmSyntax syntax, Symbol symbol)
    {
        LinePlace place = symbol.Place;
        SwitchInput? on = Switch(syntax.On, place);
        SwitchInput? off = Switch(syntax.Off, place);
        if (syntax.Off is not null && symbol.Kind == SymbolKind.Motor)
        {
            _context.Report(NameDiagnostics.SecondConfirmation(place.At(syntax.Off), symbol));
        }
        else if (syntax.Off?.Text == syntax.On.Text)
        {
            _context.Report(NameDiagnostics.ListedTwice(place.At(syntax.Off), syntax.On.Text));
        }

        Duration? within = _amounts.Time(syntax.Within, place);
        return on is null || within is null ? null : new Confirmation(on, off, within.Value, Reactions.Of(syntax.Reaction, Reaction.Hold), place.At(syntax));
    }

    private SwitchInput? Switch(WordSyntax? word, LinePlace place) =>
        _declarations.Resolve<SwitchInput>(word, place, symbol => symbol.Kind == SymbolKind.SwitchInput, "a switch");

    private Delivery? Delivers(DeliversSyntax syntax, LinePlace place)
    {
        Reagent? reagent = _declarations.Resolve<Reagent>(syntax.Reagent, place, symbol => symbol.Kind == SymbolKind.Reagent, "a reagent");
        Rational? rate = _amounts.Positive(syntax.Rate, Dimension.VolumeFlow, place);
        return reagent is null || rate is null || UnitTable.Find(syntax.Rate.Unit?.Text ?? string.Empty) is not { } unit
            ? null
            : new Delivery(reagent, rate.Value, unit, place.At(syntax));
    }
}
