using Training.Records.Examining;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Papers;

/// <summary>A paper that nobody is answering now.</summary>
/// <param name="View">The paper.</param>
/// <param name="IsOwn">Whether it is the reader's own.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record PaperPage(PaperView View, bool IsOwn, string Zone)
{
    /// <summary>How long the paper lasts, in whole minutes.</summary>
    public int Minutes => (int)Math.Ceiling(View.Time.TotalMinutes);

    /// <summary>The judged answers by number, where they are shown.</summary>
    public IEnumerable<JudgedPage> Answers =>
        (View.Answers ?? []).Select((judged, index) => new JudgedPage(judged, $"question-{index + 1}"));
}

/// <summary>One's own paper while its time runs.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record OpenPaperPage(OpenPaper Paper, string Zone);
