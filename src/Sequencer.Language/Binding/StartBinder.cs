using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;

namespace Sequencer.Language.Binding;

/// <summary>Units that start one another: who asks, and who may be asked by whom.</summary>
internal sealed class StartBinder
{
    private readonly BindingContext _context;

    public StartBinder(BindingContext context) => _context = context;

    public Ask? Bind(AskSyntax syntax, LinePlace place) =>
        IsAnother(syntax.Unit, place) ? new Ask(syntax.Unit.Text, place.At(syntax)) : null;

    public IEnumerable<Asker> Bind(AskedSyntax syntax, LinePlace place)
    {
        HashSet<string> named = new(StringComparer.Ordinal);
        foreach (WordSyntax unit in syntax.Units)
        {
            if (!named.Add(unit.Text))
            {
                _context.Report(NameDiagnostics.ListedTwice(place.At(unit), unit.Text));
            }
            else if (IsAnother(unit, place))
            {
                yield return new Asker(unit.Text, place.At(unit));
            }
        }
    }

    public StartedFact? Bind(NameExpression started, LinePlace place) =>
        IsAnother(started.Name, place) ? new StartedFact(started.Name.Text, place.At(started)) : null;

    private bool IsAnother(WordSyntax unit, LinePlace place)
    {
        if (unit.Text == _context.UnitName)
        {
            _context.Report(UnitDiagnostics.StartsItself(place.At(unit), unit.Text));
            return false;
        }

        return _context.Symbols.ResolveUnit(unit.Text, place.At(unit)) is not null;
    }
}
