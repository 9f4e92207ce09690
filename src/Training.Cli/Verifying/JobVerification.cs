using System.Globalization;
using System.Text.Json.Nodes;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;

namespace Training.Cli.Verifying;

/// <summary>Checks what a pack says of the days of a job and tells of each person how they stood.</summary>
internal static class JobVerification
{
    /// <returns>Whether the issuer signed it and everybody was competent on every day.</returns>
    public static bool Tell(JsonObject job, TrustedKeys? trusted, KeyRing own, TextWriter output, DateTimeOffset now)
    {
        // A single key is taken for that of whoever is named, also where the rest was changed so that it cannot be read.
        var issuer = job["issuer"] is JsonValue value && value.TryGetValue(out string? named) ? named : "";
        var read = JobDays.Check(job, trusted?.For(issuer) ?? own, now);
        if (!read.IsOk)
        {
            output.WriteLine("The job");
            Line(output, false, "signature", read.Sentence);
            output.WriteLine();
            return false;
        }

        var days = read.Value;
        output.WriteLine($"The job for {days.Customer}, {days.Vehicle}, by {days.Shop}: {Written(days.FirstDay)} to {Written(days.LastDay)}");
        Line(output, true, "signature", "The issuer signed this, and nothing was changed since.");
        foreach (var person in days.People)
            Line(output, person.Held, "days", $"{person.Name}, {person.Competency}: {Told(person)}");
        if (days.AsOf < days.LastDay)
            output.WriteLine($"              What is said of days after {Written(days.AsOf)} holds if nothing happens; download the file again when they are over.");
        output.WriteLine();
        return days.AllHeld;
    }

    private static string Told(JobPerson person) => person.Held
        ? "competent on every day."
        : string.Join("; ", person.Days.Select(span =>
            $"{(span.From == span.To ? Written(span.From) : $"{Written(span.From)} to {Written(span.To)}")} {(span.Holds ? "competent" : $"not competent ({span.State})")}")) + ".";

    private static void Line(TextWriter output, bool isSo, string subject, string sentence) =>
        output.WriteLine($"  {(isSo ? "yes" : "no"),-12}{subject,-11}{sentence}");

    private static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
