using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Shared equipment, and the claims of steps on it.</summary>
internal sealed class ClaimBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public ClaimBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    /// <summary>What is shared must be known before any unit's steps are bound.</summary>
    public static void Declare(SharedSyntax syntax, BindingContext context)
    {
        foreach (WordSyntax output in syntax.Outputs)
        {
            context.SharedOutputs.TryAdd(output.Text, syntax.Name.Text);
        }
    }

    public SharedEquipment Bind(SharedSyntax syntax, LinePlace place)
    {
        List<Output> outputs = [];
        foreach (WordSyntax name in syntax.Outputs)
        {
            if (_declarations.ResolveOutput(name, place) is not { } output)
            {
                continue;
            }

            if (_context.SharedOutputs[name.Text] != syntax.Name.Text || outputs.Exists(other => other.Tag == output.Tag))
            {
                _context.Report(NameDiagnostics.ListedTwice(place.At(name), output.Tag));
            }
            else
            {
                outputs.Add(output);
            }
        }

        return new SharedEquipment(syntax.Name.Text, syntax.Title.Text, [.. outputs], place.At(syntax));
    }

    public Claim? Bind(ClaimSyntax syntax, LinePlace place)
    {
        Duration? limit = _amounts.Time(syntax.Limit, place);
        Symbol? symbol = _context.Symbols.Resolve(syntax.Equipment, place, found => found.Kind == SymbolKind.Shared, "shared equipment");
        return symbol is null || limit is null
            ? null
            : new Claim(
                QualifiedName.Of(symbol.Unit ?? _context.UnitName, symbol.Name),
                limit.Value,
                Reactions.Of(syntax.Reaction, Reaction.Hold),
                syntax.Message.Text,
                syntax.ReleasedWhileHeld,
                place.At(syntax));
    }
}
