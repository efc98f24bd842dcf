using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Directly represented variables (IEC 61131-3). How areas of different size overlap is the
/// controller's own affair, so only equal addresses are told.
/// </summary>
internal sealed class AddressBinder
{
    private const int Largest = 65_535;
    private readonly BindingContext _context;
    private readonly List<DirectAddress> _used = [];

    public AddressBinder(BindingContext context) => _context = context;

    /// <summary>The address; one without a place where it was wrong, which is reported.</summary>
    /// <param name="word">The address as written.</param>
    /// <param name="area">The letter of the area it must be in: I or Q.</param>
    /// <param name="sizes">The letters of the sizes that fit.</param>
    /// <param name="place">Where its line is.</param>
    /// <param name="needed">What is needed, with an example, for the message.</param>
    public DirectAddress Bind(WordSyntax word, char area, string sizes, LinePlace place, string needed)
    {
        SourceSpan span = place.At(word);
        string text = word.Text;
        ImmutableArray<int> numbers = text.Length > 3 ? Numbers(text[3..]) : [];
        if (numbers.IsEmpty || text[1] != area || !sizes.Contains(text[2], StringComparison.Ordinal) || (text[2] == 'X' && (numbers.Length < 2 || numbers[^1] > 15)))
        {
            _context.Report(NameDiagnostics.WrongAddress(span, needed));
            return new DirectAddress(area, sizes[0], [], span);
        }

        DirectAddress address = new(area, text[2], numbers, span);
        _used.Add(address);
        return address;
    }

    /// <summary>Of equal addresses the later in the file is at fault, whichever was bound first.</summary>
    public void ReportDuplicates()
    {
        Dictionary<string, SourceSpan> first = new(StringComparer.Ordinal);
        foreach (DirectAddress address in _used.OrderBy(used => used.Span.Span.Start))
        {
            if (!first.TryAdd(address.ToString(), address.Span))
            {
                _context.Report(NameDiagnostics.AddressTwice(address.Span, address.ToString(), first[address.ToString()]));
            }
        }
    }

    private static ImmutableArray<int> Numbers(string text)
    {
        ImmutableArray<int>.Builder numbers = ImmutableArray.CreateBuilder<int>();
        foreach (string part in text.Split('.'))
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number > Largest)
            {
                return [];
            }

            numbers.Add(number);
        }

        return numbers.ToImmutable();
    }
}
