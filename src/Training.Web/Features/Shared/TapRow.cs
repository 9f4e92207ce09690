using Training.Records.Asking;

namespace Training.Web.Features.Shared;

/// <summary>A step or decoy on the page beside the vehicle.</summary>
/// <param name="Offer">What it says.</param>
/// <param name="Places">Its places in the order of work so far; empty where it was not done.</param>
/// <param name="IsWrong">Whether it must not be done.</param>
public sealed record TapRow(OfferedView Offer, IReadOnlyList<int> Places, bool IsWrong)
{
    /// <summary>Whether it was done.</summary>
    public bool IsDone => Places.Count > 0;
}
