namespace Training.Proofs;

/// <summary>
/// Either what was asked for, or one plain sentence that says what is wrong with the request. What people or their
/// files can get wrong is a value; exceptions are for faults of the calling code.
/// </summary>
/// <typeparam name="T">What was asked for.</typeparam>
public readonly struct Outcome<T>
{
    private readonly T? value;
    private readonly string? sentence;

    private Outcome(bool isOk, T? value, string? sentence) =>
        (IsOk, this.value, this.sentence) = (isOk, value, sentence);

    /// <summary>Whether there is a value.</summary>
    public bool IsOk { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none: ask <see cref="IsOk"/> first.</exception>
    public T Value => IsOk ? value! : throw new InvalidOperationException($"No value: {sentence}");

    /// <summary>What is wrong, in one sentence for a person.</summary>
    /// <exception cref="InvalidOperationException">Nothing is wrong: ask <see cref="IsOk"/> first.</exception>
    public string Sentence => IsOk ? throw new InvalidOperationException("Nothing is wrong.") : sentence ?? "Nothing was said.";

    /// <summary>A value.</summary>
    public static implicit operator Outcome<T>(T value) => new(true, value, null);

    /// <summary>A refusal.</summary>
    public static implicit operator Outcome<T>(Refused refused) => new(false, default, refused.Sentence);
}

/// <summary>Why a request was refused whole.</summary>
/// <param name="Sentence">One plain sentence for a person.</param>
public readonly record struct Refused(string Sentence);
