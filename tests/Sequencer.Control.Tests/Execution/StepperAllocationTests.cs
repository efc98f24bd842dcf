using Sequencer.Control.Execution;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.Execution;

public sealed class StepperAllocationTests
{
    [Fact]
    public void A_compiled_scan_allocates_nothing()
    {
        TransitionSystem system = RandomSystem.Create(3, states: 300);
        Assert.Equal(0, AllocatedBy(new CompiledStepper(system, [.. system.Requirements.Select(requirement => requirement.Holds)])));
    }

    [Fact]
    public void An_interpreted_scan_allocates_nothing()
    {
        TransitionSystem system = RandomSystem.Create(3, states: 300);
        Assert.Equal(0, AllocatedBy(new Interpreter(system, [.. system.Requirements.Select(requirement => requirement.Holds)])));
    }

    [Fact]
    public void A_specialised_scan_allocates_nothing()
    {
        TransitionSystem system = RandomSystem.Create(3, states: 300);
        SpecialisingStepper stepper = new(system, [.. system.Requirements.Select(requirement => requirement.Holds)]);
        for (int scan = 0; scan < 5000; scan++)
        {
            stepper.Step();
        }

        long whole = stepper.WholeScans;
        long allocated = AllocatedBy(stepper);
        Assert.Equal(whole, stepper.WholeScans);
        Assert.Equal(0, allocated);
    }

    private static long AllocatedBy(Stepper stepper)
    {
        stepper.Step();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int scan = 0; scan < 1000; scan++)
        {
            stepper.Step();
        }

        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
