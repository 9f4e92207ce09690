namespace Training.Measures.Conductors;

/// <summary>Standard annealed copper, NBS Handbook 100 and IEC 60028.</summary>
public static class Copper
{
    /// <summary>Resistivity at 20 °C in Ω·mm²/m: 1/58, printed as 0.017241.</summary>
    public const double Resistivity = 0.017241;

    /// <summary>Temperature coefficient of resistance at 20 °C, per kelvin. Its reciprocal is 234.5 + 20.</summary>
    public const double Coefficient = 0.00393;

    /// <summary>Density in g/cm³.</summary>
    public const double Density = 8.89;

    /// <summary>Mass resistivity at 20 °C in Ω·g/m²: resistivity times density.</summary>
    public const double MassResistivity = 0.15328;
}
