using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace SurfaceUnroll.Bench.Views;

/// <summary>The part of a component that lives in the page: an object that a script makes for one of its elements.</summary>
/// <remarks>
/// Whoever goes on to another stop takes the element away while the script is still on its way. Nothing is asked of the page any more then, and what it
/// answers to what was asked before counts for nothing; else a fault of a part that is gone would end the whole page.
/// </remarks>
/// <param name="scripts">Of the page.</param>
/// <param name="module">Address of the script.</param>
public sealed class ScriptPart(IJSRuntime scripts, string module) : IAsyncDisposable
{
    private IJSObjectReference? _module, _part;

    /// <summary>The component is gone.</summary>
    public bool IsGone { get; private set; }

    /// <summary>Has the script make its object, once.</summary>
    /// <param name="maker">Function of the script.</param>
    /// <param name="element">The element.</param>
    /// <param name="more">What else the function takes.</param>
    public Task AttachAsync(string maker, ElementReference element, params object?[] more) => WhileThereAsync(async () =>
    {
        _module ??= await scripts.InvokeAsync<IJSObjectReference>("import", module);
        if (!IsGone && _part is null) _part = await _module.InvokeAsync<IJSObjectReference>(maker, [element, .. more]);
        // What came too late is let go here: nobody asks for it any more.
        if (IsGone) await ReleaseAsync();
    });

    /// <summary>Asks the object to do something; nothing before it is made.</summary>
    public Task CallAsync(string name, params object?[] arguments) => WhileThereAsync(async () =>
    {
        if (_part is not null) await _part.InvokeVoidAsync(name, arguments);
    });

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (IsGone) return;
        IsGone = true;
        await ReleaseAsync();
    }

    private async Task ReleaseAsync()
    {
        (IJSObjectReference? part, IJSObjectReference? from) = (_part, _module);
        (_part, _module) = (null, null);
        try
        {
            if (part is not null) await part.InvokeVoidAsync("dispose");
            if (part is not null) await part.DisposeAsync();
            if (from is not null) await from.DisposeAsync();
        }
        catch (Exception e) when (IsOfThePast(e))
        {
            // The page went first.
        }
    }

    private async Task WhileThereAsync(Func<Task> work)
    {
        if (IsGone) return;
        try
        {
            await work();
        }
        catch (Exception e) when (e is JSDisconnectedException or TaskCanceledException || (IsGone && IsOfThePast(e)))
        {
            // The page, or this part of it, is gone.
        }
    }

    private static bool IsOfThePast(Exception e) => e is JSException or JSDisconnectedException or TaskCanceledException or ObjectDisposedException;
}
