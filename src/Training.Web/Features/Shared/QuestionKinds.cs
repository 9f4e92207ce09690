using System.ComponentModel;
using Training.Content.Scenarios;

namespace Training.Web.Features.Shared;

/// <summary>The kinds of question in addresses and in words.</summary>
public static class QuestionKinds
{
    /// <summary>What the technician is asked to do, as a sentence of the interface.</summary>
    /// <param name="kind">The kind.</param>
    [return: Localizable(true)]
    public static string Task(QuestionKind kind) => kind switch
    {
        QuestionKind.Finish => "Finish what a colleague has begun",
        QuestionKind.FirstFault => "Find where an order first goes wrong",
        QuestionKind.Next => "Say what may be done now",
        QuestionKind.Wait => "Say how long to wait",
        QuestionKind.WhatIf => "Say what can happen",
        QuestionKind.Reading => "Take a reading and decide",
        _ => "Put the whole job in order",
    };

    /// <summary>The kind as files and addresses name it, such as <c>first-fault</c>.</summary>
    /// <param name="kind">The kind.</param>
    public static string CodeOf(QuestionKind kind) => kind switch
    {
        QuestionKind.FirstFault => "first-fault",
        QuestionKind.WhatIf => "what-if",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>Reads a kind from an address; the scenario's first where it names none of its kinds.</summary>
    /// <param name="code">The text.</param>
    /// <param name="of">The kinds of the scenario.</param>
    public static QuestionKind Read(string? code, IReadOnlyList<QuestionKind> of)
    {
        ArgumentNullException.ThrowIfNull(of);
        return of.Where(kind => CodeOf(kind) == code).DefaultIfEmpty(of[0]).First();
    }
}
