namespace Training.Measures;

/// <summary>
/// Either what was asked for, or the objection to it. What people can get wrong is a value with a sentence, never an
/// exception. The ground floor refers to no other project, so this type is its own.
/// </summary>
/// <typeparam name="T">What was asked for.</typeparam>
public readonly struct Outcome<T>
{
    private readonly T? value;
    private readonly Objection? objection;

    private Outcome(T value) => this.value = value;

    private Outcome(Objection objection) => this.objection = objection;

    /// <summary>Whether there is a value.</summary>
    public bool IsOk => objection is null;

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none: ask <see cref="IsOk"/> first.</exception>
    public T Value => objection is null
        ? value!
        : throw new InvalidOperationException($"No value: {objection.Sentence}");

    /// <summary>The objection.</summary>
    /// <exception cref="InvalidOperationException">There is none: ask <see cref="IsOk"/> first.</exception>
    public Objection Objection => objection ?? throw new InvalidOperationException("There is no objection.");

    /// <summary>A value.</summary>
    public static implicit operator Outcome<T>(T value) => new(value);

    /// <summary>An objection.</summary>
    public static implicit operator Outcome<T>(Objection objection) => new(objection);

    /// <summary>Goes on with the value; an objection is passed through.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return objection is null ? next(value!) : objection;
    }
}

/// <summary>Why a number or a text was not taken, in one plain sentence for the person who gave it.</summary>
public sealed record Objection
{
    /// <summary>An objection.</summary>
    /// <param name="sentence">The sentence; <c>$"The table has no row for {what}."</c> makes one.</param>
    public Objection(Phrase sentence) => Said = sentence;

    /// <summary>The sentence as it can be said in any language.</summary>
    public Phrase Said { get; }

    /// <summary>The sentence in English.</summary>
    public string Sentence => Said.ToString();

    /// <inheritdoc/>
    public override string ToString() => Sentence;
}
