using System.Collections.Immutable;
using System.Text;

namespace Sequencer.StructuredText.Tests.Pascal;

/// <summary>A statement of random text: words, and where it holds others, lists of them behind more words. It can be made smaller.</summary>
internal sealed record Piece(string Before, ImmutableArray<(string Head, ImmutableArray<Piece> Body)> Parts, string After)
{
    public static Piece Leaf(string text) => new(text, [], "");

    public static string Text(ImmutableArray<Piece> pieces)
    {
        StringBuilder text = new();
        foreach (Piece piece in pieces)
        {
            text.Append(piece.Before);
            foreach ((string head, ImmutableArray<Piece> body) in piece.Parts)
            {
                text.Append(head).Append('\n').Append(Text(body));
            }

            text.Append(piece.After).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The list with something less: a statement left out, or what it holds in its place, or something less in it.</summary>
    public static IEnumerable<ImmutableArray<Piece>> Smaller(ImmutableArray<Piece> pieces)
    {
        for (int place = 0; place < pieces.Length; place++)
        {
            Piece piece = pieces[place];
            yield return pieces.RemoveAt(place);
            if (!piece.Parts.IsEmpty)
            {
                yield return pieces.RemoveAt(place).InsertRange(place, piece.Parts.SelectMany(part => part.Body));
            }

            for (int part = 0; part < piece.Parts.Length; part++)
            {
                foreach (ImmutableArray<Piece> body in Smaller(piece.Parts[part].Body))
                {
                    yield return pieces.SetItem(place, piece with { Parts = piece.Parts.SetItem(part, (piece.Parts[part].Head, body)) });
                }
            }
        }
    }
}
