using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Training.Sequencing;

namespace Training.Records.Interchange;

/// <summary>
/// People in a file of separated values (RFC 4180), as a spreadsheet writes it: a first line with the names of the columns
/// <c>name</c>, <c>sign-in</c> and, if wanted, <c>language</c>, in any order, separated by commas, semicolons or tabs.
/// </summary>
public sealed class PeopleFile
{
    /// <summary>How many people one file may bring.</summary>
    public const int MostPeople = 300;

    private const int MostLetters = 200_000;
    private static readonly string[] Columns = ["name", "sign-in", "language"];

    private PeopleFile(IReadOnlyList<PersonInFile> people) => People = people;

    /// <summary>The people, in the order of the file.</summary>
    public IReadOnlyList<PersonInFile> People { get; }

    /// <summary>Reads a file; a line that is all empty counts for nothing.</summary>
    /// <param name="text">The text of the file.</param>
    /// <returns>The people, or the sentence of what makes the file unreadable as a whole.</returns>
    public static Outcome<PeopleFile, Refusal> Read(string? text)
    {
        var content = (text ?? "").TrimStart('\uFEFF');
        if (string.IsNullOrWhiteSpace(content)) return new Refusal("The file is empty.");
        if (content.Length > MostLetters) return new Refusal($"The file is too long: at most {MostLetters} letters.");
        var head = content.AsSpan().TrimStart("\r\n ");
        var firstLine = head[..(head.IndexOfAny('\r', '\n') is var end and >= 0 ? end : head.Length)];
        var separator = firstLine.Contains('\t') ? "\t" : firstLine.Contains(';') ? ";" : ",";
        try
        {
            using var reader = new CsvReader(new StringReader(content), new CsvConfiguration(CultureInfo.InvariantCulture)
            {
                Delimiter = separator,
                TrimOptions = TrimOptions.Trim,
                PrepareHeaderForMatch = header => header.Header.Trim().ToLowerInvariant(),
                MissingFieldFound = null,
                DetectColumnCountChanges = false,
            });
            reader.Read();
            reader.ReadHeader();
            if (WhatIsWrong(reader.HeaderRecord ?? []) is { } wrong) return wrong;
            var people = new List<PersonInFile>();
            while (reader.Read())
            {
                if (people.Count == MostPeople) return new Refusal($"A file brings at most {MostPeople} people; split it.");
                people.Add(new(FirstLineOf(reader.Parser), reader.GetField("name") ?? "", reader.GetField("sign-in") ?? "", reader.TryGetField<string>("language", out var language) ? language ?? "" : "")
                {
                    HasTooMany = reader.Parser.Count > reader.HeaderRecord!.Length,
                });
            }

            return people.Count == 0 ? new Refusal("The file names nobody under its first line.") : new PeopleFile(people);
        }
        catch (BadDataException fault)
        {
            return new Refusal($"Line {fault.Context?.Parser?.RawRow}: a quotation mark stands where it cannot be read. Put the whole field between quotation marks and double those inside it.");
        }
    }

    // A name between quotation marks may go over several lines; whoever looks for it looks where it begins.
    private static int FirstLineOf(IParser parser) => parser.RawRow - parser.RawRecord.AsSpan().TrimEnd("\r\n").ToString().ReplaceLineEndings("\n").Count(letter => letter == '\n');

    private static Refusal? WhatIsWrong(string[] header)
    {
        var names = header.Select(name => name.Trim().ToLowerInvariant()).ToList();
        if (names.FirstOrDefault(name => names.Count(other => other == name) > 1) is { } twice) return new($"The column “{twice}” is there twice.");
        if (names.FirstOrDefault(name => !Columns.Contains(name)) is { } unknown)
            return new($"There is no column “{unknown}”; the first line names the columns name, sign-in and, if wanted, language.");
        return names.Contains("name") && names.Contains("sign-in") ? null
            : new("The first line names the columns: name and sign-in, and language if wanted.");
    }
}

/// <summary>A person in a file, as the file has it.</summary>
/// <param name="Line">The line of the file, from 1.</param>
/// <param name="Name">The name that is shown and printed.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="Language">The language; empty for the provider's own.</param>
public sealed record PersonInFile(int Line, string Name, string UserName, string Language)
{
    /// <summary>Whether the line has more fields than there are columns.</summary>
    public bool HasTooMany { get; init; }
}
