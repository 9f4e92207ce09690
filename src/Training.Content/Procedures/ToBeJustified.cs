namespace Training.Content.Procedures;

/// <summary>What stands for a reason that nobody has given yet. It can be read and graded by, and never published.</summary>
internal static class ToBeJustified
{
    /// <summary>The words.</summary>
    public const string Words = "to be justified";

    /// <summary>Whether a reason is still to be given.</summary>
    public static bool Is(string? text) => text is not null && text.Trim().TrimEnd('.').Equals(Words, StringComparison.OrdinalIgnoreCase);
}
