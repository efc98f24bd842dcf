using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Tests.States;

/// <summary>
/// Whatever the sections, an abort has led to Aborted when as many scans have passed as the limits of its steps
/// add up to, and one: a step leaves at its limit at the latest, and sections do not go round. The interpreter
/// and the compiled stepper run side by side.
/// </summary>
public sealed class SectionTimeTests
{
    private const int Programs = 40;
    private const int Aborts = 12;

    [Fact]
    public void An_abort_reaches_Aborted_within_the_sum_of_the_limits()
    {
        int longWaits = 0;
        for (int seed = 0; seed < Programs; seed++)
        {
            RandomSections sections = new(seed);
            CheckResult check = ProgramChecker.Check(new SourceText("random.seq", sections.Program), 100);
            Assert.True(check.Program is not null && !check.HasErrors, $"seed {seed}\n{DiagnosticRenderer.Render(check.Diagnostics)}");
            TransitionSystem system = SiteLowering.Lower(new SiteProgram("random", 100, [check.Program]));
            longWaits += new Run(system, seed).Abort(Aborts, sections.Limits("aborting") + 1);
        }

        Assert.True(longWaits > 20, $"only {longWaits} aborts took more than one scan");
    }

    /// <summary>Random contacts and commands on both steppers.</summary>
    private sealed class Run
    {
        private readonly TransitionSystem _system;
        private readonly Interpreter _interpreter;
        private readonly CompiledStepper _compiled;
        private readonly Random _random;
        private readonly int _state;

        public Run(TransitionSystem system, int seed)
        {
            _system = system;
            _interpreter = new Interpreter(system, []);
            _compiled = new CompiledStepper(system, []);
            _random = new Random(seed);
            _state = system.States.Select((state, place) => (state.Variable.Name, place)).First(pair => pair.Name == "U.state").place;
        }

        private ProceduralState State => (ProceduralState)_interpreter.States[_state];

        /// <summary>How many of the aborts took longer than one scan.</summary>
        public int Abort(int times, int bound)
        {
            int longer = 0;
            for (int abort = 0; abort < times; abort++)
            {
                do
                {
                    Scan("reset", "start", "hold", "restart", "stop");
                }
                while (_random.Next(25) > 0 || State is ProceduralState.Idle or ProceduralState.Complete);

                Command("U.abort");
                Assert.Equal(ProceduralState.Aborting, State);
                int scans = 0;
                for (; State != ProceduralState.Aborted; scans++)
                {
                    Assert.True(scans < bound, $"not Aborted after {scans} scans");
                    Scan("start", "hold", "restart", "stop", "abort");
                }

                longer += scans > 1 ? 1 : 0;
                Command("U.reset");
            }

            return longer;
        }

        private void Command(string command)
        {
            Step(name => false);
            Step(name => name == command);
        }

        private void Scan(params string[] commands) => Step(name => name.EndsWith(".contact", StringComparison.Ordinal)
            ? _random.Next(6) == 0
            : commands.Any(command => name == $"U.{command}") && _random.Next(12) == 0);

        private void Step(Func<string, bool> on)
        {
            for (int input = 0; input < _system.Inputs.Length; input++)
            {
                long value = _system.Inputs[input].Sort == Sort.Boolean && on(_system.Inputs[input].Name) ? 1 : 0;
                _interpreter.Inputs[input] = value;
                _compiled.Inputs[input] = value;
            }

            _interpreter.Step();
            _compiled.Step();
            Assert.Equal(_interpreter.States.ToArray(), _compiled.States.ToArray());
            Assert.Equal(_interpreter.Outputs.ToArray(), _compiled.Outputs.ToArray());
        }
    }
}
