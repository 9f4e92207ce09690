using Training.Measures.Quantities;

namespace Training.Measures.Conductors;

/// <summary>A copper conductor between two points: a cable, or a ground strap.</summary>
/// <param name="Length">
/// The length that the current passes. Where a wire and not the frame brings it back, that is there and back.
/// </param>
/// <param name="Section">The copper's cross-section.</param>
/// <param name="Copper">The temperature of the copper, not of the air.</param>
public sealed record CableRun(Length Length, CrossSection Section, Temperature Copper);
