using System.Reflection;
using System.Runtime.CompilerServices;

using QuarterCar.Model;
using QuarterCar.Numerics.Integration;

namespace QuarterCar.House.Tests;

/// <summary>Public types of Model and Numerics do not change once they are made; the few whose own fields do are listed with the reason.</summary>
public sealed class ImmutabilityTests
{
    /// <summary>Memory of one run, used again by the next: allocation would cost more than the arithmetic.</summary>
    private static readonly Dictionary<string, string> s_mutable = new()
    {
        ["QuarterCar.Model.Motion.EventLog"] = "grows while a run notes its events",
        ["QuarterCar.Model.Motion.MotionRun"] = "owns the memory of a run",
        ["QuarterCar.Model.Motion.PieceGrid"] = "which piece of each law holds now",
        ["QuarterCar.Model.Motion.TravelCell"] = "a row of the grid of pieces: plain data, filled once when a run begins",
        ["QuarterCar.Model.Motion.VelocityCell"] = "likewise",
        ["QuarterCar.Numerics.Integration.DenseStep"] = "one step and its interpolant, written in place in the log",
        ["QuarterCar.Numerics.Integration.StepLog"] = "grows while a run goes on",
        ["QuarterCar.Numerics.SplitMix64"] = "a random stream moves on with every number",
        ["QuarterCar.Numerics.Signals.WkFilter"] = "a filter remembers what went through it",
    };

    private static readonly Type[] s_types =
        [.. Types(typeof(Corner).Assembly).Concat(Types(typeof(Integrator).Assembly)).OrderBy(t => t.FullName, StringComparer.Ordinal)];

    public static TheoryData<Type> PublicTypes => [.. s_types];

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_does_not_change_or_is_listed_with_its_reason(Type type)
    {
        if (!s_mutable.ContainsKey(type.FullName!)) Assert.Empty(Changeable(type));
    }

    [Fact]
    public void The_list_names_only_types_that_exist_and_change()
    {
        var changing = s_types.Where(t => Changeable(t).Any()).Select(t => t.FullName!).ToHashSet();
        Assert.All(s_mutable.Keys, name => Assert.True(changing.Contains(name), $"{name} is gone or no longer changes: strike it off the list"));
    }

    private static IEnumerable<Type> Types(Assembly assembly) =>
        assembly.GetExportedTypes().Where(t => !t.IsEnum && !t.IsInterface && !typeof(Delegate).IsAssignableFrom(t) && !typeof(Exception).IsAssignableFrom(t));

    /// <summary>Members through which an object can change after it is made: fields that are not readonly (of a property: not init-only), and arrays that are handed out.</summary>
    private static IEnumerable<string> Changeable(Type type)
    {
        const BindingFlags all = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        if (type.IsAbstract && type.IsSealed) return [];
        var setters = type.GetProperties(all).Where(p => p.SetMethod is { } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))).Select(p => p.Name);
        var initOnly = type.GetProperties(all).Where(p => p.SetMethod is not null).Select(p => $"<{p.Name}>k__BackingField").ToHashSet();
        var fields = type.GetFields(all).Where(f => !f.IsInitOnly && !initOnly.Contains(f.Name)).Select(f => f.Name);
        var arrays = type.GetProperties(all).Where(p => p.PropertyType.IsArray && p.GetMethod is { IsPublic: true }).Select(p => p.Name);
        return setters.Concat(fields).Concat(arrays);
    }
}
