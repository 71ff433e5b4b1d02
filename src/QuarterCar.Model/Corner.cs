namespace QuarterCar.Model;

/// <summary>The model of one corner that is computed with.</summary>
public sealed class Corner
{
}
