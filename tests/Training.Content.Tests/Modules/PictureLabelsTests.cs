namespace Training.Content.Tests.Modules;

public sealed class PictureLabelsTests
{
    private const string Path = "modules/01-relay-tray/pictures/labels.es.yaml";

    private static ContentReading Read(string labels) => ContentReader.Read(ContentFolders.With(Path, labels));

    [Fact]
    public void What_is_left_over_and_what_is_missing_is_told_and_holds_nothing_back()
    {
        var reading = Read("labels:\n  tary: bandeja\n  60 s: 60 s\n");
        Assert.True(reading.IsFit);
        Assert.Equal(
            [
                $"{Path}:1:1: remark: The label \"off\" is missing",
                $"{Path}:1:1: remark: The label \"tray\" is missing",
                $"{Path}:2:3: remark: No picture of the module has the label \"tary\"",
            ],
            reading.Problems.Select(problem => problem.ToString().Split(": it is")[0].Split(": mend")[0]));
    }

    [Fact]
    public void A_label_may_be_broken_over_lines_in_the_picture()
    {
        const string picture = "modules/01-relay-tray/pictures/tray.svg";
        var files = ContentFolders.With(picture, ContentFolders.File(picture).Text.Replace(">tray<", ">\n    relay\n    tray <", StringComparison.Ordinal))
            .Where(file => file.Path != Path).Append(new(Path, "labels: { relay tray: bandeja, off: apagado }\n")).ToArray();
        var reading = ContentReader.Read(files);
        Assert.Empty(reading.Problems);
        Assert.Contains("bandeja", reading.Library!.Modules[0].FindPicture("pictures/tray.svg", "es")!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Content_without_labels_is_read_and_shown_as_before()
    {
        var reading = ContentReader.Read([.. ContentFolders.Good.Where(file => file.Path != Path)]);
        Assert.Empty(reading.Problems);
        var module = reading.Library!.Modules[0];
        Assert.Equal(module.FindPicture("pictures/tray.svg"), module.FindPicture("pictures/tray.svg", "es"));
    }

    [Fact]
    public void Labels_of_a_module_without_a_lesson_do_no_harm() =>
        Assert.Single(ContentReader.Read([new(Path, "labels: { tray: bandeja }\n")]).Problems, problem => problem.Level == ProblemLevel.Error);
}
