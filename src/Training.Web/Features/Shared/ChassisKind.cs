using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>What a kind of chassis is called: its id with spaces, the code of the kind in capitals (<c>truck-k26</c> is truck K26).</summary>
public static class ChassisKind
{
    /// <summary>The name.</summary>
    /// <param name="kind">The kind.</param>
    public static string Named(VariantId kind) => string.Join(' ', (kind.Value ?? "").Split('-', StringSplitOptions.RemoveEmptyEntries)
        .Select(word => word.Any(char.IsAsciiDigit) ? word.ToUpperInvariant() : word));
}
