using Microsoft.JSInterop;

namespace SurfaceUnroll.Bench.Views;

/// <summary>Puts the cursor into a field.</summary>
internal static class FieldFocus
{
    /// <summary>As soon as the field is there.</summary>
    /// <param name="scripts">Of the page.</param>
    /// <param name="id">Of the field.</param>
    public static async Task FocusAsync(this IJSRuntime scripts, string id)
    {
        await using IJSObjectReference module = await scripts.InvokeAsync<IJSObjectReference>("import", "./drag.js");
        await module.InvokeVoidAsync("focus", id);
    }
}
