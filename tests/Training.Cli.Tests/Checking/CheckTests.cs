namespace Training.Cli.Tests.Checking;

public sealed class CheckTests : CommandLine
{
    private string Content()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Data, "good"), "*", SearchOption.AllDirectories))
            Write(Path.Combine("content", Path.GetRelativePath(Path.Combine(Data, "good"), file)), File.ReadAllText(file));
        return Path.Combine(Folder, "content");
    }

    private void Spoil(string path, string old, string with)
    {
        var file = Path.Combine(Folder, "content", path);
        File.WriteAllText(file, File.ReadAllText(file).Replace(old, with, StringComparison.Ordinal));
    }

    [Fact]
    public void Sound_content_is_done_with_nothing_on_standard_error()
    {
        var outcome = Run("check", Content());
        Assert.Equal((ExitCode.Done, "18 files checked, 0 errors.\n", ""), (outcome.Code, outcome.Output, outcome.Errors));
    }

    [Fact]
    public void How_much_there_is_to_read_is_told_a_lesson_a_line()
    {
        var lines = Run("check", Content(), "--measure").Output.Split('\n');
        Assert.StartsWith("modules/01-relay-tray/lesson.md ", lines[1], StringComparison.Ordinal);
        Assert.Equal(["1", "1"], lines[1].Split(' ', StringSplitOptions.RemoveEmptyEntries)[5..7]);
    }

    [Fact]
    public void What_languages_lack_is_told_by_path()
    {
        var outcome = Run("check", Content(), "--languages", "es,hi");
        Assert.Equal(ExitCode.Done, outcome.Code);
        Assert.Contains("es: 10 of 14 texts translated, 0 out of step\nes: missing: modules/02-refit/lesson.es.md\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("hi: 0 of 14 texts translated, 0 out of step\nhi: missing: competencies/relay-work.hi.yaml\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("hi: missing: modules/01-relay-tray/pictures/labels.hi.yaml: tray\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("hi: missing: modules/01-relay-tray/lesson.hi.md: source key-off\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("hi: missing: procedures/change-relay-tray.hi.yaml: fact key\n", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.WrongUsage, Run("check", Folder, "--languages").Code);
    }

    [Fact]
    public void A_folder_that_holds_content_will_do()
    {
        Content();
        Assert.Equal(ExitCode.Done, Run("check", Folder).Code);
    }

    [Fact]
    public void Links_and_what_is_no_file_are_told_and_not_read()
    {
        var content = Content();
        File.CreateSymbolicLink(Path.Combine(content, "scenarios", "elsewhere.md"), "/etc/passwd");
        Directory.CreateSymbolicLink(Path.Combine(content, "scenarios", "round"), content);
        using (var made = System.Diagnostics.Process.Start("mkfifo", Path.Combine(content, "procedures", "endless.yaml"))) made.WaitForExit();
        foreach (var folder in new[] { content, Path.Combine(content, "procedures") })
        {
            var outcome = Run("check", folder);
            Assert.Equal(ExitCode.AtFault, outcome.Code);
            Assert.Contains(Path.Combine(content, "procedures", "endless.yaml") + ":1:1: error: ", outcome.Errors, StringComparison.Ordinal);
        }

        Assert.Equal(3, Run("check", content).Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public void Faults_stand_one_a_line_under_the_path_that_was_given()
    {
        var content = Content();
        Spoil("procedures/change-relay-tray.yaml", "takes: 5 s", "takse: 5 s");
        Spoil("scenarios/half-way.md", "variant: tipper", "colour: red");
        var outcome = Run("check", content);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Equal(
            [
                $"{content}/procedures/change-relay-tray.yaml:8:44: error: A step has no key \"takse\": did you mean \"takes\"?",
                $"{content}/scenarios/half-way.md:4:1: error: A scenario has no key \"colour\"; it may have title, procedure, module, variant, kinds, start, show, absent, reading.",
            ],
            outcome.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void A_procedure_by_itself_is_checked_by_itself()
    {
        var content = Content();
        Directory.Delete(Path.Combine(content, "modules"), recursive: true);
        Assert.Equal(ExitCode.Done, Run("check", Path.Combine(content, "procedures", "change-relay-tray.yaml")).Code);
    }

    [Fact]
    public void A_step_that_no_rule_touches_is_remarked_and_is_no_fault()
    {
        var content = Content();
        Spoil("procedures/change-relay-tray.yaml", "first: key-off, then: tag,", "first: key-off, then: rest,");
        foreach (var path in new[] { content, Path.Combine(content, "procedures", "change-relay-tray.yaml") })
        {
            var outcome = Run("check", path);
            Assert.Equal(ExitCode.Done, outcome.Code);
            Assert.Matches(@"^\S+change-relay-tray.yaml:11:5: remark: .*“tag”.*\n$", outcome.Errors);
        }
    }

    [Fact]
    public void A_dash_reads_a_procedure_from_standard_input_and_its_name_does_not_matter()
    {
        var tray = File.ReadAllText(Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml"));
        Assert.Equal((ExitCode.Done, ""), (RunWith(tray, "check", "-").Code, RunWith(tray, "check", "-").Errors));
        Assert.StartsWith("-:8:44: error: ", RunWith(tray.Replace("takes: 5 s", "takse: 5 s", StringComparison.Ordinal), "check", "-").Errors, StringComparison.Ordinal);
        Assert.Equal(ExitCode.WrongUsage, Run("check", "-", "-").Code);
    }

    [Fact]
    public void Lists_with_nothing_in_them_are_as_good_as_none_and_a_group_of_one_is_remarked()
    {
        var outcome = RunWith(
            """{"id":"p","title":"P","revision":1,"variants":[],"facts":{},"decoys":[],"rules":[],"steps":[{"id":"a","do":"A","one-of":"g","sets":{},"variants":[]}]}""",
            "check", "-");
        Assert.Equal(ExitCode.Done, outcome.Code);
        Assert.Contains("remark: Step “a” is the only one of “g”", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_procedure_under_another_name_is_at_fault()
    {
        var path = Write("other.yaml", File.ReadAllText(Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml")));
        Assert.StartsWith($"{path}:1:5: error: ", Run("check", path).Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scenarios/half-way.md")]
    [InlineData("modules/01-relay-tray/lesson.md")]
    [InlineData("modules/01-relay-tray/pictures/tray.svg")]
    [InlineData("competencies/relay-work.yaml")]
    [InlineData("procedures/change-relay-tray.es.yaml")]
    public void Any_other_file_is_checked_in_its_folder_and_told_of_alone(string path)
    {
        var file = Path.Combine(Content(), path);
        Spoil("scenarios/at-the-crane.md", "kinds: [order]", "kinds: [disorder]");
        Assert.Equal((ExitCode.Done, ""), (Run("check", file).Code, Run("check", file).Errors));
        File.WriteAllText(file, "broken: [");
        var outcome = Run("check", file);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.All(outcome.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.StartsWith(file + ":", line, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_there_or_is_no_content_is_told_in_a_sentence()
    {
        Assert.Contains("nowhere:1:1: error: There is no such file.", Run("check", Path.Combine(Folder, "nowhere")).Errors, StringComparison.Ordinal);
        Assert.Contains("There is no content here", Run("check", Folder).Errors, StringComparison.Ordinal);
        Assert.Contains("stands in no content folder", Run("check", Write("notes.md", "x")).Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_paths_are_checked_at_once()
    {
        var outcome = Run("check", Content(), Path.Combine(Folder, "nowhere"), Write("a.yaml", ""));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Equal(2, outcome.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }
}
