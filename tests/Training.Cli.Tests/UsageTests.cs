namespace Training.Cli.Tests;

public sealed class UsageTests : CommandLine
{
    public static TheoryData<string> WrongCommands =>
    [
        "", "chek", "check", "check --fast x", "grade", "grade p.yaml", "grade p.yaml --answer", "grade p.yaml --answer a --answers b",
        "grade p.yaml --answer a --answer b", "grade p.yaml q.yaml --answer a", "grade --answer a", "grade p.yaml --answer a --colour",
        "analyse", "analyse p.yaml q.yaml", "analyse p.yaml --variant", "analyse p.yaml --variant a --variant b", "analyse p.yaml --fast",
        "verify", "verify --log", "verify a b", "verify a --key", "verify a --key x --key y", "verify a --fast", "verify --log a --name x",
        "verify a --on yesterday",
    ];

    [Theory]
    [MemberData(nameof(WrongCommands))]
    public void A_command_that_is_written_wrongly_is_answered_with_the_usage(string command)
    {
        var outcome = Run(command.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(ExitCode.WrongUsage, outcome.Code);
        Assert.Contains("Usage:", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check --help")]
    [InlineData("grade -h")]
    [InlineData("grade p.yaml --help")]
    [InlineData("analyse --help")]
    [InlineData("pack -h")]
    [InlineData("unpack -h")]
    [InlineData("verify --help")]
    public void Help_shows_the_usage_and_is_no_fault(string command)
    {
        var outcome = Run(command.Split(' '));
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.StartsWith("Usage:", outcome.Output, StringComparison.Ordinal);
    }
}
