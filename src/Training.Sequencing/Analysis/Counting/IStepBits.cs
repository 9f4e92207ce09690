namespace Training.Sequencing.Analysis.Counting;

/// <summary>
/// A set of steps as bits, a value that is never changed. There are two forms, so that procedures of up to 64 steps
/// are counted on single machine words.
/// </summary>
internal interface IStepBits<T> : IEquatable<T>
    where T : struct, IStepBits<T>
{
    /// <summary>The empty set of steps numbered below a size.</summary>
    static abstract T None(int size);

    bool IsEmpty { get; }

    int Count { get; }

    /// <summary>The lowest step of a set that is not empty.</summary>
    int Lowest { get; }

    bool Has(int step);

    T With(int step);

    T Without(int step);

    T And(T other);

    T Or(T other);

    T AndNot(T other);
}
