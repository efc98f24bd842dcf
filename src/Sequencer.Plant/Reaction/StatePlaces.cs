namespace Sequencer.Plant.Reaction;

/// <summary>Which equation and which piece of the plant a number of its state belongs to, in words.</summary>
internal static class StatePlaces
{
    public static (string Equation, string Place) Of(PlantParts parts, int component)
    {
        StateLayout layout = parts.Layout;
        for (int index = 0; index < parts.Tanks.Length; index++)
        {
            string tank = parts.Tanks[index].Description.Name;
            int place = component - layout.Mixed(index);
            if (component == layout.Volume(index) || component == layout.Overflowed(index))
            {
                return ("balance of volume", tank);
            }

            if (component == layout.Heat(index))
            {
                return ("balance of heat", tank);
            }

            if (place >= 0 && place < 3 * layout.Contents)
            {
                return ($"balance of {parts.Contents.Names[place % layout.Contents]}", tank);
            }
        }

        for (int drum = 0; drum < parts.Drums.Length; drum++)
        {
            string name = parts.Drums[drum].Description.Name;
            if (component == layout.Vacuum(drum))
            {
                return ("vacuum", name);
            }

            if (component > layout.Vacuum(drum) && component < layout.Held(drum) + layout.Contents)
            {
                return ("coat, cake and filtrate", name);
            }
        }

        for (int settler = 0; settler < parts.Settlers.Length; settler++)
        {
            if (component >= layout.Clear(settler) && component < layout.Bed(settler) + layout.Contents)
            {
                return ("settling", parts.Tanks[parts.Settlers[settler].Tank].Description.Name);
            }
        }

        for (int press = 0; press < parts.Presses.Length; press++)
        {
            if (component >= layout.PressWater(press) && component < layout.PressHeld(press) + layout.Contents)
            {
                return ("cakes and filtrate", parts.Presses[press].Description.Name);
            }
        }

        for (int water = 0; water < parts.SealWaters.Length; water++)
        {
            if (component == layout.SealWater(water))
            {
                return ("heat of the seal water", parts.SealWaters[water].Description.Name);
            }
        }

        return ("balances of the plant", parts.Model.Name);
    }
}
