namespace ToolpathForge.Plugin.Client;

/// <summary>Why the core gave no result.</summary>
public enum CoreFailure
{
    /// <summary>There is no core where it was looked for.</summary>
    NotFound,

    /// <summary>It could not be started.</summary>
    NotStarted,

    /// <summary>It ended before it had answered, or in the middle of a message.</summary>
    Ended,

    /// <summary>It was silent for too long.</summary>
    TimedOut,

    /// <summary>What it said is no message of the contract.</summary>
    Rubbish,

    /// <summary>It failed as often in a row as it may, and is not started again until that is asked for.</summary>
    GivenUp,

    /// <summary>It refused the request by an error of the protocol.</summary>
    Refused,

    /// <summary>The request was cancelled.</summary>
    Cancelled,
}

/// <summary>The core gave no result.</summary>
public sealed class CoreException : Exception
{
    /// <summary>Makes one.</summary>
    /// <param name="failure">Why.</param>
    /// <param name="message">What is so, in a sentence for the person at the screen.</param>
    /// <param name="code">The code of the protocol's error; 0 where there is none.</param>
    public CoreException(CoreFailure failure, string message, int code = 0)
        : base(message)
    {
        Failure = failure;
        Code = code;
    }

    /// <summary>Why.</summary>
    public CoreFailure Failure { get; }

    /// <summary>The code of the protocol's error; 0 where there is none.</summary>
    public int Code { get; }

    /// <summary>Whether the process is of no more use and has been ended: it is started anew by the next request.</summary>
    public bool IsBroken => Failure is CoreFailure.NotStarted or CoreFailure.Ended or CoreFailure.TimedOut or CoreFailure.Rubbish;
}
