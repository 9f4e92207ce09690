using System.ComponentModel;

namespace Training.Sequencing;

/// <summary>
/// Either what was asked for, or what is wrong with the request. Errors that people can cause are values with a
/// sentence, never exceptions.
/// </summary>
/// <typeparam name="T">What was asked for.</typeparam>
/// <typeparam name="TFault">What is wrong.</typeparam>
public readonly struct Outcome<T, TFault>
{
    private readonly T? value;
    private readonly TFault? fault;

    private Outcome(bool isOk, T? value, TFault? fault) => (IsOk, this.value, this.fault) = (isOk, value, fault);

    /// <summary>Whether there is a value.</summary>
    public bool IsOk { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none: a fault of ours, ask <see cref="IsOk"/> first.</exception>
    public T Value => IsOk ? value! : throw new InvalidOperationException($"No value: {fault}");

    /// <summary>What is wrong.</summary>
    /// <exception cref="InvalidOperationException">Nothing is: a fault of ours, ask <see cref="IsOk"/> first.</exception>
    public TFault Fault => IsOk ? throw new InvalidOperationException("Nothing is wrong.") : fault!;

    /// <summary>A value.</summary>
    public static implicit operator Outcome<T, TFault>(T value) => new(true, value, default);

    /// <summary>A fault.</summary>
    public static implicit operator Outcome<T, TFault>(TFault fault) => new(false, default, fault);

    /// <summary>Takes the one way or the other.</summary>
    public TResult Match<TResult>(Func<T, TResult> ok, Func<TFault, TResult> wrong)
    {
        ArgumentNullException.ThrowIfNull(ok);
        ArgumentNullException.ThrowIfNull(wrong);
        return IsOk ? ok(value!) : wrong(fault!);
    }
}

/// <summary>Why a request was refused whole, in one sentence for the person who made it.</summary>
public sealed record Refusal
{
    /// <summary>A refusal whose sentence has no gaps.</summary>
    /// <param name="sentence">The sentence.</param>
    public Refusal([Localizable(true)] string sentence) => Said = sentence;

    /// <summary>A refusal.</summary>
    /// <param name="sentence">The sentence; <c>$"There is no {what}."</c> makes one.</param>
    public Refusal(Sentence sentence) => Said = sentence;

    /// <summary>The sentence as it can be said in any language.</summary>
    public Sentence Said { get; }

    /// <summary>Which part of the request is wrong, by its name, such as <c>UserName</c>; null where it is not one part.</summary>
    public string? About { get; init; }

    /// <summary>The sentence in English, for the command line and for whoever develops.</summary>
    public string Sentence => Said.ToString();

    /// <inheritdoc/>
    public override string ToString() => Sentence;
}
