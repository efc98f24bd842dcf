namespace Sequencer.Plant.Tests.OutsideChecks;

/// <summary>A test that holds the physics against something outside: <c>spec/outside-checks.md</c> lists it, with what its comment says of the source.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class OutsideCheckAttribute(Basis basis) : Attribute
{
    public Basis Basis { get; } = basis;
}
