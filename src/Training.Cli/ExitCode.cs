namespace Training.Cli;

/// <summary>How a command ended.</summary>
public static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The content or the answer is at fault; standard error says where and what.</summary>
    public const int AtFault = 1;

    /// <summary>The command was written wrongly; standard error shows how to write it.</summary>
    public const int WrongUsage = 2;
}
