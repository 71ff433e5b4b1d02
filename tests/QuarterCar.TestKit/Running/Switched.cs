using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;

namespace QuarterCar.TestKit.Running;

/// <summary>Equations with switches: each is on where its function of time and state is positive, and the pieces are what the switches make together.</summary>
public interface ISwitched
{
    /// <summary>Number of switches.</summary>
    int Switches { get; }

    /// <summary>dy/dt with switches held as they are, whatever their functions say.</summary>
    /// <param name="t">Time, s.</param>
    /// <param name="y">State.</param>
    /// <param name="on">Bit i set: switch i is on.</param>
    Vector256<double> Derivative(double t, Vector256<double> y, uint on);

    /// <summary>Function of a switch.</summary>
    double Switch(int index, double t, Vector256<double> y);

    /// <summary>Switches after one of them has turned; bits above the last switch are the model's own.</summary>
    uint Turn(int index, uint on, double t, Vector256<double> y) => on ^ (1u << index);

    /// <summary>Switches after a break time has been passed.</summary>
    uint Pass(uint on) => on;
}

/// <summary>A switch that turned.</summary>
/// <param name="Index">Which.</param>
/// <param name="On">True where it turned on.</param>
/// <param name="Time">When, s.</param>
/// <param name="State">State then.</param>
public readonly record struct SwitchEvent(int Index, bool On, double Time, Vector256<double> State);

/// <summary>Switched equations written plainly on the integrator's terms: every switch is a guard of the present piece, looked at on every step.</summary>
/// <param name="model">The equations.</param>
/// <param name="on">Switches that are on at the start.</param>
/// <param name="events">Where turned switches are noted, or null.</param>
public struct Switched<TModel>(TModel model, uint on, List<SwitchEvent>? events = null) : IPiecewiseSystem
    where TModel : struct, ISwitched
{
    private uint _on = on;

    /// <inheritdoc/>
    public readonly int Piece => (int)_on;

    /// <inheritdoc/>
    public readonly Vector256<double> Derivative(double t, Vector256<double> y) => model.Derivative(t, y, _on);

    /// <inheritdoc/>
    public readonly uint Suspects(in DenseStep step) => (1u << model.Switches) - 1;

    /// <inheritdoc/>
    public readonly double Guard(int guard, double t, Vector256<double> y)
    {
        double value = model.Switch(guard, t, y);
        return (_on >> guard & 1) != 0 ? value : -value;
    }

    public bool TryLinear(int guard, double start, out LinearGuard linear)
    {
        linear = default;
        return false;
    }

    public int Stretches(int guard, in DenseStep step) => 1;

    /// <inheritdoc/>
    public void Cross(int guard, double t, Vector256<double> y)
    {
        events?.Add(new SwitchEvent(guard, (_on >> guard & 1) == 0, t, y));
        _on = model.Turn(guard, _on, t, y);
    }

    /// <inheritdoc/>
    public void PassBreak(int index, double t, Vector256<double> y) => _on = model.Pass(_on);

    /// <inheritdoc/>
    public readonly bool IsAtRest(Vector256<double> y, Vector256<double> dydt) => false;
}

/// <summary>Switched equations with the event location left out: the switches follow the state inside every stage, which is what not to do.</summary>
/// <param name="model">The equations.</param>
public readonly struct ByValue<TModel>(TModel model) : IRightHandSide
    where TModel : struct, ISwitched
{
    /// <inheritdoc/>
    public Vector256<double> Derivative(double t, Vector256<double> y)
    {
        uint on = 0;
        for (int i = 0; i < model.Switches; i++)
            on |= model.Switch(i, t, y) > 0 ? 1u << i : 0;
        return model.Derivative(t, y, on);
    }
}
