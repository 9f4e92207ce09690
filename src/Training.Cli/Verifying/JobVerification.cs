using System.Text.Json.Nodes;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;

namespace Training.Cli.Verifying;

/// <summary>Checks what a pack says of the days of a job and tells of each person how they stood.</summary>
internal static class JobVerification
{
    /// <summary>Tells whether the issuer signed it, whether it is about the credentials beside it, and who was competent on every day.</summary>
    public static void Tell(
        JsonObject job, IReadOnlyList<CompetencyCredential> credentials, TrustedKeys? trusted, KeyRing own, Telling telling, DateTimeOffset now)
    {
        // A single key is taken for that of whoever is named, also where the rest was changed so that it cannot be read.
        var issuer = job["issuer"] is JsonValue value && value.TryGetValue(out string? named) ? named : "";
        var read = JobDays.Check(job, trusted?.For(issuer) ?? own, now);
        if (!read.IsOk)
        {
            telling.Begin("The job");
            telling.Line(CheckState.Failed, "signature", read.Sentence);
            telling.End();
            return;
        }

        var days = read.Value;
        telling.Begin($"The job for {days.Customer}, {days.Vehicle}, by {days.Shop}: {Written(days.FirstDay)} to {Written(days.LastDay)}");
        telling.Line(CheckState.Passed, "signature", "The issuer signed this, and nothing was changed since.");
        if (days.Objection(credentials) is { } objection) telling.Line(CheckState.Failed, "people", objection);
        foreach (var person in days.People)
            telling.Line(person.Held ? CheckState.Passed : CheckState.Failed, "days", $"{person.Name}, {person.Competency}: {Told(person)}");
        if (days.AsOf < days.LastDay)
            telling.Note($"What is said of days after {Written(days.AsOf)} holds if nothing happens; download the file again when they are over.");
        telling.End();
    }

    private static string Told(JobPerson person) => person.Held
        ? "competent on every day."
        : string.Join("; ", person.Days.Select(span =>
            $"{(span.From == span.To ? Written(span.From) : $"{Written(span.From)} to {Written(span.To)}")} {(span.Holds ? "competent" : $"not competent ({span.State})")}")) + ".";

    private static string Written(DateOnly day) => ShopCalendar.Written(day);
}
