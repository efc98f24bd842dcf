namespace Sequencer.Plant.Integration;

/// <summary>The derivatives of rates by the state, from differences: each component is moved up by about the root of what rounding leaves of it.</summary>
internal sealed class Jacobian
{
    /// <summary>Root of the distance from 1 to the next number.</summary>
    private const double RelativeMove = 1.5e-8;

    private readonly Rates _rates;
    private readonly double[] _scale;
    private readonly double[] _columns;
    private readonly double[] _base;
    private readonly double[] _moved;
    private readonly double[] _state;

    /// <param name="rates">the right-hand side</param>
    /// <param name="scale">the size below which a component counts as nothing</param>
    public Jacobian(Rates rates, double[] scale)
    {
        _rates = rates;
        _scale = scale;
        _columns = new double[scale.Length * scale.Length];
        _base = new double[scale.Length];
        _moved = new double[scale.Length];
        _state = new double[scale.Length];
    }

    /// <summary>d rate of <paramref name="row"/> by d state of <paramref name="column"/>, 1/s.</summary>
    public double this[int row, int column] => _columns[(column * _base.Length) + row];

    public void Find(double time, ReadOnlySpan<double> state)
    {
        state.CopyTo(_state);
        _rates(time, _state, _base);
        for (int column = 0; column < _state.Length; column++)
        {
            double held = _state[column];
            _state[column] = held + (RelativeMove * Math.Max(Math.Abs(held), _scale[column]));
            double move = _state[column] - held;
            _rates(time, _state, _moved);
            _state[column] = held;
            Span<double> derivatives = _columns.AsSpan(column * _state.Length, _state.Length);
            for (int row = 0; row < derivatives.Length; row++)
            {
                derivatives[row] = (_moved[row] - _base[row]) / move;
            }
        }
    }
}
