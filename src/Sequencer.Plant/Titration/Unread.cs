namespace Sequencer.Plant.Titration;

/// <summary>A stretch of pH without a point, and what it takes to come through it, litres of reagent: more than the curve guesses may be hidden there or less, but no more than that.</summary>
public readonly record struct Unread(double LowPh, double HighPh, double Litres);
