using Training.Content.Yaml;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>A procedure as its file has it, with its places and problems.</summary>
/// <param name="File">The file.</param>
/// <param name="Procedure">
/// The procedure; null where something that an order depends on could not be read, so that nobody is told of faults
/// that merely follow from that one.
/// </param>
/// <param name="Places">Where its parts stand.</param>
/// <param name="Problems">Its problems.</param>
internal sealed record ProcedureDraft(ContentFile File, Procedure? Procedure, ProcedurePlaces Places, ProblemList Problems)
{
    private readonly List<(ProcedureTranslation Reading, TranslatedProcedure Procedure)> translations = [];

    public IEnumerable<ProblemList> AllProblems => [Problems, .. translations.Select(translation => translation.Reading.Problems)];

    /// <summary>The procedure with its translations; only where no error stands.</summary>
    public WrittenProcedure ToWritten() => new(Procedure!, File)
    {
        Translations = [.. translations.Select(translation => translation.Procedure)],
    };

    /// <summary>Reads the texts in another language; of a procedure that cannot be read there is nothing to hold them against.</summary>
    public void AddTranslation(ContentFile file, string language)
    {
        if (Procedure is null) return;
        var reading = new ProcedureTranslation(file, language);
        translations.Add((reading, reading.Read(Procedure)));
    }

    public static ProcedureDraft Read(ContentFile file, ProcedureDemands demands)
    {
        var problems = new ProblemList(file.Path);
        var parser = new ProcedureParser(problems, demands);
        var root = PlainText.IsSound(file, problems) ? YamlTree.Read(file.Text, problems) : null;
        var procedure = root is null ? null : parser.Parse(root);
        var draft = new ProcedureDraft(file, parser.IsWhole ? procedure : null, parser.Places, problems);
        if (procedure is null) return draft;
        if (demands == ProcedureDemands.ToGrade) return draft;
        draft.CheckName(procedure);
        if (!parser.IsWhole) return draft;
        draft.Report(ProcedureCheck.Problems(procedure));
        if (!problems.HasErrors) draft.Report(ProcedureAnalysis.Remarks(procedure));
        return draft;
    }

    /// <summary>Takes over what the engine found, each at the place of what it is about.</summary>
    public void Report(IEnumerable<AuthoringProblem> problems)
    {
        foreach (var problem in problems) Problems.Hold(Places.Of(problem.Subject), problem.Sentence);
    }

    /// <summary>Takes over what the engine remarked, each at the place of what it is about.</summary>
    public void Report(IEnumerable<AuthoringRemark> remarks)
    {
        foreach (var remark in remarks) Problems.Remark(Places.Of(remark.Subject), remark.Sentence);
    }

    private void CheckName(Procedure procedure)
    {
        var name = Path.GetFileNameWithoutExtension(File.Name);
        if (procedure.Id.Value == name || File.Path == ContentFile.Nameless) return;
        Problems.Error(Places.Id, $"The id \"{procedure.Id}\" must be the same as the file's name: write \"id: {name}\", or name the file {procedure.Id}.yaml.");
    }
}
