namespace Sequencer.Language.Formatting;

/// <summary>No empty line at either end, never two in a row, and one before each step, join, section and module with the comments right above it.</summary>
internal static class BlankLines
{
    public static IReadOnlyList<LayoutItem> Ordered(IReadOnlyList<LayoutItem> items)
    {
        List<LayoutItem> ordered = [];
        foreach (LayoutItem item in items)
        {
            if (item is StatementItem { IsSetOff: true })
            {
                SetOff(ordered);
            }

            if (item is not BlankItem || ordered is [.., not BlankItem])
            {
                ordered.Add(item);
            }
        }

        if (ordered is [.., BlankItem])
        {
            ordered.RemoveAt(ordered.Count - 1);
        }

        return ordered;
    }

    private static void SetOff(List<LayoutItem> ordered)
    {
        int place = ordered.Count;
        while (place > 0 && ordered[place - 1] is CommentItem)
        {
            place--;
        }

        if (place > 0 && ordered[place - 1] is not BlankItem)
        {
            ordered.Insert(place, new BlankItem());
        }
    }
}
