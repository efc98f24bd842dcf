namespace Sequencer.Plant.Reaction;

/// <summary>What a number of the plant's state is, and its unit, in words.</summary>
internal static class StateQuantities
{
    public static (string Quantity, string Unit) Of(PlantParts parts, int component)
    {
        StateLayout layout = parts.Layout;
        for (int drum = 0; drum < parts.Drums.Length; drum++)
        {
            switch (component - layout.Vacuum(drum))
            {
                case 0: return ("vacuum", "Pa");
                case 1: return ("filtrate", "L");
                case 2: return ("filter aid taken off", "g");
                case 3: return ("other solids taken off", "g");
                case 4: return ("water taken off", "L");
                case 5: return ("water in coat and cake", "L");
                case int held when held > 5 && held < 6 + layout.Contents: return Content(parts, held - 6, "on the drum");
            }
        }

        for (int settler = 0; settler < parts.Settlers.Length; settler++)
        {
            switch (component - layout.Clear(settler))
            {
                case 0: return ("clear water", "L");
                case 1: return ("what is in flocs", "g");
                case 2: return ("size of flocs", "m");
                case int bed when bed > 2 && bed < 3 + layout.Contents: return Content(parts, bed - 3, "on the floor");
            }
        }

        for (int press = 0; press < parts.Presses.Length; press++)
        {
            switch (component - layout.PressWater(press))
            {
                case 0: return ("water in the press", "L");
                case 1: return ("filtrate", "L");
                case 2: return ("dry solids dropped", "g");
                case 3: return ("water dropped", "L");
                case int held when held > 3 && held < 4 + layout.Contents: return Content(parts, held - 4, "in the press");
            }
        }

        for (int line = 0; line < parts.DosingLines.Length; line++)
        {
            int content = component - layout.DosingLine(line);
            if (content >= 0 && content < layout.Contents)
            {
                return Content(parts, content, "in the line");
            }
        }

        return Enumerable.Range(0, parts.SealWaters.Length).Any(water => component == layout.SealWater(water)) ? ("temperature", "C") : ("an amount", "");
    }

    private static (string Quantity, string Unit) Content(PlantParts parts, int content, string where) =>
        ($"{parts.Contents.Names[content]} {where}", parts.Contents.IsWeighed(content) ? "g" : "mol");
}
