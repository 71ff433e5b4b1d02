using QuarterCar.Reports.Tables;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests;

public sealed class ColumnsTests
{
    [Fact]
    public void Trace_headers_in_US_units_are_those_of_the_contract() => Assert.Equal(
        "time_s,distance_in,ground_in,road_in,sprung_in,sprung_velocity_in_s,unsprung_in,unsprung_velocity_in_s,wheel_travel_in,wheel_velocity_in_s,"
        + "shaft_travel_in,shaft_velocity_in_s,shaft_showing_in,sprung_acceleration_g,unsprung_acceleration_g,spring_force_lbf,damper_force_lbf,"
        + "gas_force_lbf,bump_stop_force_lbf,friction_force_lbf,bottom_out_force_lbf,top_out_force_lbf,shaft_force_lbf,tyre_force_lbf,"
        + "tyre_deflection_in,slider_gap_in,lower_spring_compression_in,upper_group_compression_in,coil_nut_force_lbf,stop_nut_force_lbf,rate_region",
        string.Join(',', Columns.Trace.Headers(UnitSystem.Us)));

    [Fact]
    public void Trace_headers_in_SI_are_those_of_the_contract() => Assert.Equal(
        "time_s,distance_m,ground_m,road_m,sprung_m,sprung_velocity_m_s,unsprung_m,unsprung_velocity_m_s,wheel_travel_m,wheel_velocity_m_s,"
        + "shaft_travel_m,shaft_velocity_m_s,shaft_showing_m,sprung_acceleration_g,unsprung_acceleration_g,spring_force_N,damper_force_N,"
        + "gas_force_N,bump_stop_force_N,friction_force_N,bottom_out_force_N,top_out_force_N,shaft_force_N,tyre_force_N,"
        + "tyre_deflection_m,slider_gap_m,lower_spring_compression_m,upper_group_compression_m,coil_nut_force_N,stop_nut_force_N,rate_region",
        string.Join(',', Columns.Trace.Headers(UnitSystem.Si)));

    [Theory]
    [InlineData(UnitSystem.Us, "event,time_s,distance_in,shaft_travel_in,shaft_velocity_in_s,peak_force_lbf,penetration_in,duration_s,energy_ft_lbf")]
    [InlineData(UnitSystem.Si, "event,time_s,distance_m,shaft_travel_m,shaft_velocity_m_s,peak_force_N,penetration_m,duration_s,energy_J")]
    public void Event_headers_are_those_of_the_contract(UnitSystem units, string expected) =>
        Assert.Equal(expected, string.Join(',', Columns.Events.Headers(units)));

    [Theory]
    [InlineData(UnitSystem.Us, "wheel_travel_in,shaft_travel_in,shaft_showing_in,motion_ratio,spring_force_lbf,gas_force_lbf,bump_stop_force_lbf,shaft_force_lbf,"
        + "wheel_force_lbf,spring_rate_lbf_in,wheel_rate_lbf_in,coil_nut_force_lbf,stop_nut_force_lbf,rate_region")]
    [InlineData(UnitSystem.Si, "wheel_travel_m,shaft_travel_m,shaft_showing_m,motion_ratio,spring_force_N,gas_force_N,bump_stop_force_N,shaft_force_N,"
        + "wheel_force_N,spring_rate_N_m,wheel_rate_N_m,coil_nut_force_N,stop_nut_force_N,rate_region")]
    public void Curve_headers_are_those_of_the_contract(UnitSystem units, string expected) =>
        Assert.Equal(expected, string.Join(',', Columns.Curve.Headers(units)));
}
