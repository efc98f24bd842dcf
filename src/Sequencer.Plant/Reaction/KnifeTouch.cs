using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// When a drum's knife comes to touch what is on it: from then on it takes from a coat of a hundred kilograms. A step over that moment gets what is taken wrong by grams, below nothing too.
/// </summary>
internal sealed class KnifeTouch(PlantParts parts, SwitchingIntegrator integrator)
{
    /// <summary>m; a knife that is nearer counts as touching.</summary>
    private const double Touching = 1e-6;

    /// <summary>s; how exactly the moment is found.</summary>
    private const double EventTolerance = 1e-6;

    private double[] _state = [];

    /// <summary>The first moment within the last step; null where no knife comes to touch.</summary>
    public double? Time()
    {
        double? first = null;
        foreach (DrumFilter drum in parts.Drums)
        {
            if (drum.BeyondKnifeMetres(integrator.State) > Touching && Beyond(drum, integrator.Start) < -Touching)
            {
                double touch = RootLocation.Find(time => Beyond(drum, time), integrator.Start, integrator.End, EventTolerance);
                first = Math.Min(first ?? double.PositiveInfinity, touch);
            }
        }

        return first;
    }

    private double Beyond(DrumFilter drum, double time)
    {
        if (_state.Length != integrator.State.Length)
        {
            _state = new double[integrator.State.Length];
        }

        integrator.Interpolate(time, _state);
        return drum.BeyondKnifeMetres(_state);
    }
}
