namespace Training.Web.Drawings;

/// <summary>What a replay shows: plain data, so that the drawing can be tested without a vehicle or a browser.</summary>
/// <param name="Lanes">A lane for each fact.</param>
/// <param name="Rows">What was done, in order.</param>
/// <param name="NotDone">What should have been done and was not.</param>
public sealed record ReplayPicture(
    IReadOnlyList<ReplayLane> Lanes,
    IReadOnlyList<ReplayRow> Rows,
    IReadOnlyList<ReplayGap> NotDone);

/// <summary>A fact and the values that it can have.</summary>
/// <param name="Fact">What it is called.</param>
/// <param name="Values">Its values; the first is drawn hollow, the second full, further ones hatched.</param>
/// <param name="AtStart">The value that holds before the first row, as an index into <paramref name="Values"/>.</param>
public sealed record ReplayLane(string Fact, IReadOnlyList<string> Values, int AtStart);

/// <summary>One thing that was done.</summary>
/// <param name="Place">Its place as it is written: a number from 1.</param>
/// <param name="Text">What was done.</param>
/// <param name="Clock">When it began, as it is written: <c>1:35</c>.</param>
/// <param name="After">The value of each lane after it, as indexes into the lanes' values.</param>
/// <param name="Faults">The faults that happened here.</param>
public sealed record ReplayRow(
    string Place,
    string Text,
    string Clock,
    IReadOnlyList<int> After,
    IReadOnlyList<FaultMark> Faults);

/// <summary>Something that was left out.</summary>
/// <param name="Text">What.</param>
/// <param name="Fault">Its fault.</param>
public sealed record ReplayGap(string Text, FaultMark Fault);
