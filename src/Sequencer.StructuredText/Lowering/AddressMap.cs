using Sequencer.StructuredText.Syntax;

namespace Sequencer.StructuredText.Lowering;

/// <summary>The addresses that have a name, to find the ones that have two.</summary>
internal sealed class AddressMap
{
    private readonly Dictionary<string, AddressSyntax> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<(SlotRole, string), List<Taken>> _taken = [];

    /// <summary>Takes the address; answers an earlier one that names the same bit, and whether it is the very same address.</summary>
    /// <param name="address">What is taken.</param>
    /// <param name="elements">How many of its size stand there, one behind another.</param>
    /// <param name="syntax">Where it is written.</param>
    public (AddressSyntax First, bool IsSame)? Take(DirectAddress address, int elements, AddressSyntax syntax)
    {
        if (!_exact.TryAdd(address.Canonical, syntax))
        {
            return (_exact[address.Canonical], true);
        }

        if (address.Bits(elements, byBytes: true) is not { } byBytes || address.Bits(elements, byBytes: false) is not { } oneByOne)
        {
            return null;
        }

        if (!_taken.TryGetValue((address.Role, byBytes.Before), out List<Taken>? others))
        {
            others = [];
            _taken.Add((address.Role, byBytes.Before), others);
        }

        Taken taken = new(byBytes.Start, oneByOne.Start, byBytes.Length, address.Size, syntax);
        Taken? first = others.FirstOrDefault(taken.Meets);
        others.Add(taken);
        return first is null ? null : (first.Syntax, false);
    }

    /// <summary>
    /// What overlaps only under one of the two ways of numbering is not said to; nor is a word over bits, as the words of analogue channels mostly
    /// have numbers of their own (common practice, no source).
    /// </summary>
    private sealed record Taken(long ByBytes, long OneByOne, long Length, char Size, AddressSyntax Syntax)
    {
        public bool Meets(Taken other) =>
            (Size != 'X' || other.Size is 'X' or 'B') && (other.Size != 'X' || Size is 'X' or 'B')
            && Meet(ByBytes, other.ByBytes, other) && Meet(OneByOne, other.OneByOne, other);

        private bool Meet(long start, long otherStart, Taken other) => start < otherStart + other.Length && otherStart < start + Length;
    }
}
