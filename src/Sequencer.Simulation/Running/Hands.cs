using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Running;

/// <summary>The operator's hands and the power supply: what lasts longer than the scan it began in.</summary>
internal sealed class Hands(ClosedLoop loop)
{
    /// <summary>How long a push button is held; a scan longer than this still sees it once.</summary>
    private const double PressSeconds = 0.5;

    private readonly List<(int Input, double Until)> _pressed = [];
    private double _powerBack = double.PositiveInfinity;

    public ClosedLoop Loop => loop;

    public void Press(int input, long value = 1)
    {
        loop.SetInput(input, value);
        _pressed.Add((input, loop.Seconds + PressSeconds));
    }

    public void LosePower(double seconds)
    {
        loop.CutPower();
        _powerBack = loop.Seconds + seconds;
    }

    /// <summary>Lets go of buttons and brings power back when their time is over; true when power came back.</summary>
    public bool Release()
    {
        for (int index = _pressed.Count - 1; index >= 0; index--)
        {
            if (loop.Seconds >= _pressed[index].Until)
            {
                loop.SetInput(_pressed[index].Input, 0);
                _pressed.RemoveAt(index);
            }
        }

        if (loop.Powered || loop.Seconds < _powerBack)
        {
            return false;
        }

        loop.RestorePower();
        return true;
    }
}
