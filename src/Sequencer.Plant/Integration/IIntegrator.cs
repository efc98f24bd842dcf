namespace Sequencer.Plant.Integration;

/// <summary>Steps a system of ordinary differential equations on, with values between the ends of its last step.</summary>
internal interface IIntegrator
{
    /// <summary>Where the last accepted step began; equal to <see cref="End"/> before the first.</summary>
    double Start { get; }

    double End { get; }

    /// <summary>State at <see cref="End"/>.</summary>
    ReadOnlySpan<double> State { get; }

    /// <summary>Steps accepted so far.</summary>
    long Accepted { get; }

    /// <summary>Grows whenever what is between <see cref="Start"/> and <see cref="End"/> is another step, or none.</summary>
    long Version { get; }

    /// <summary>Begins anew at a time and state; what was computed beyond is forgotten.</summary>
    void Restart(double time, ReadOnlySpan<double> state);

    /// <summary>Ends the last step earlier, at a time within it, where the equations change.</summary>
    void Truncate(double time);

    /// <summary>One accepted step from <see cref="End"/>, not beyond <paramref name="limit"/>.</summary>
    StepOutcome Step(double limit);

    /// <summary>Back to where the last step began.</summary>
    void TakeBack();

    /// <summary>The state at a time within the last accepted step.</summary>
    void Interpolate(double time, Span<double> state);

    /// <summary>As <see cref="Interpolate(double, Span{double})"/>, over a state interpolated at the same <see cref="Version"/>: what does not move may be left as it is.</summary>
    void Reinterpolate(double time, Span<double> state);

    /// <summary>One component of the state at a time within the last accepted step.</summary>
    double Interpolate(double time, int component);
}
