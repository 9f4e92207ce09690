namespace Training.Web.Drawings;

/// <summary>What a line plan shows: the steps of a procedure and which must wait for which.</summary>
/// <param name="Stations">The steps, in an order that is right.</param>
/// <param name="Waits">Who waits for whom, as places in <paramref name="Stations"/>: the earlier, the later; no pair that others imply.</param>
public sealed record LinePlanPicture(IReadOnlyList<LinePlanStation> Stations, IReadOnlyList<LinePlanWait> Waits);

/// <summary>A step on a line plan.</summary>
/// <param name="Text">What is done; where there are several ways, each on a line of its own.</param>
/// <param name="Note">A word about it, such as the least wait before it; null for none.</param>
/// <param name="IsWait">Whether it is a wait.</param>
/// <param name="IsFree">Whether the job is right without it too, or it is one of several ways.</param>
/// <param name="Mark">How gravely somebody is hurt who does it at the wrong time; null for nobody.</param>
public sealed record LinePlanStation(string Text, string? Note = null, bool IsWait = false, bool IsFree = false, SignalWord? Mark = null);

/// <summary>One step waits for another.</summary>
/// <param name="Before">The earlier, as a place in the list of stations.</param>
/// <param name="After">The later.</param>
public readonly record struct LinePlanWait(int Before, int After);
