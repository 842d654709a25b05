using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of how pieces are formed and how joints are tacked.</summary>
internal static class FormingReport
{
    /// <summary>The plan of one piece; left out where it is not known.</summary>
    public static void Write(Utf8JsonWriter json, PanelDevelopment panel)
    {
        if (panel.Plan is not { } plan) return;
        json.WriteStartObject("plan");
        if (plan.Rolls is { } rolls) WriteRolls(json, rolls);
        else json.WriteNull("rolls");
        json.WriteStartArray("bends");
        foreach (BendStep step in plan.Bends) WriteBend(json, step);
        json.WriteEndArray();
        json.WriteStartArray("stretch");
        foreach (StretchStep step in plan.Stretch) WriteStretch(json, step);
        json.WriteEndArray();
        json.WriteStartObject("grain");
        json.WritePropertyName("along");
        ReportJson.WritePoint(json, plan.Grain.Along);
        json.WriteNumber("minimumRadius", ReportJson.Mm(plan.Grain.MinimumRadius));
        json.WriteBoolean("matters", plan.Grain.Matters);
        json.WriteEndObject();
        WriteTapes(json, plan);
        json.WriteStartObject("blank");
        json.WriteNumber("width", ReportJson.Mm(plan.Blank.Width));
        json.WriteNumber("height", ReportJson.Mm(plan.Blank.Height));
        json.WriteNumber("area", ReportJson.Mm(plan.Blank.Area));
        json.WriteNumber("massKg", plan.Blank.Mass + 0.0);
        json.WriteBoolean("tooThickToShear", plan.Blank.IsTooThickToShear);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>Tacks of the whole job; always there, if need be empty.</summary>
    public static void Write(Utf8JsonWriter json, Development development)
    {
        json.WriteStartArray("tacks");
        foreach (TackPlan plan in development.Tacks) WriteTacks(json, plan);
        json.WriteEndArray();
    }

    private static void WriteRolls(Utf8JsonWriter json, RollSchedule rolls)
    {
        json.WriteStartObject("rolls");
        json.WriteNumber("overRoll", rolls.OverRoll + 0.0);
        json.WriteString("source", rolls.Source);
        json.WriteStartArray("lines");
        ImmutableArray<(double Front, double Rear)> places = rolls.Places();
        for (int i = 0; i < rolls.Lines.Length; i++)
        {
            RollLine line = rolls.Lines[i];
            json.WriteStartObject();
            json.WriteNumber("number", line.Number);
            json.WriteNumber("length", ReportJson.Mm(line.Length));
            json.WriteNumber("stepFront", ReportJson.Mm(line.StepFront));
            json.WriteNumber("stepRear", ReportJson.Mm(line.StepRear));
            json.WriteNumber("atFront", ReportJson.Mm(places[i].Front));
            json.WriteNumber("atRear", ReportJson.Mm(places[i].Rear));
            json.WriteNumber("coneOffset", ReportJson.Mm(line.ConeOffset));
            ReportJson.WriteRadius(json, "radiusFront", line.RadiusFront);
            ReportJson.WriteRadius(json, "radiusRear", line.RadiusRear);
            ReportJson.WriteRadius(json, "rollFront", line.RollFront);
            ReportJson.WriteRadius(json, "rollRear", line.RollRear);
            json.WriteBoolean("bendsOutward", line.BendsOutward);
            json.WriteStartArray("limits");
            foreach (RollLimit limit in line.Limits) json.WriteStringValue(Words(limit));
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Words(RollLimit limit) => limit switch
    {
        RollLimit.TooLong => "too long",
        RollLimit.TooTightForRoll => "too tight for the roll",
        _ => "too tight for the material",
    };

    private static void WriteBend(Utf8JsonWriter json, BendStep step)
    {
        json.WriteStartObject();
        json.WriteNumber("number", step.Number);
        json.WriteNumber("angleDeg", ReportJson.Degrees(step.Angle));
        json.WriteNumber("bendToDeg", ReportJson.Degrees(step.BendTo));
        json.WriteNumber("minimumRadius", ReportJson.Mm(step.MinimumRadius));
        json.WriteBoolean("tooSharp", step.IsTooSharp);
        json.WriteBoolean("tooLong", step.IsTooLong);
        json.WriteString("source", step.Source);
        json.WriteEndObject();
    }

    private static void WriteStretch(Utf8JsonWriter json, StretchStep step)
    {
        json.WriteStartObject();
        json.WriteNumber("number", step.Number);
        json.WritePropertyName("flat");
        ReportJson.WritePoint(json, step.Flat);
        json.WritePropertyName("formed");
        ReportJson.WritePoint(json, step.Formed);
        json.WriteNumber("strain", step.Strain + 0.0);
        json.WriteEndObject();
    }

    private static void WriteTapes(Utf8JsonWriter json, FormingPlan plan)
    {
        json.WriteStartArray("tapeMarks");
        foreach (TapeMark mark in plan.Marks)
        {
            json.WriteStartObject();
            json.WriteString("letter", mark.Letter);
            json.WritePropertyName("flat");
            ReportJson.WritePoint(json, mark.Flat);
            json.WritePropertyName("formed");
            ReportJson.WritePoint(json, mark.Formed);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("tapes");
        foreach (TapeCheck tape in plan.Tapes)
        {
            json.WriteStartObject();
            json.WriteString("from", tape.From);
            json.WriteString("to", tape.To);
            json.WriteNumber("onBlank", ReportJson.Mm(tape.OnBlank));
            json.WriteNumber("onPart", ReportJson.Mm(tape.OnPart));
            json.WriteString("how", tape.How == TapeRun.Taut ? "taut" : "on the sheet");
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteTacks(Utf8JsonWriter json, TackPlan plan)
    {
        json.WriteStartObject();
        json.WriteString("joint", plan.Joint);
        json.WriteNumber("pitch", ReportJson.Mm(plan.Pitch));
        json.WriteStartArray("tacks");
        foreach (Tack tack in plan.Tacks)
        {
            json.WriteStartObject();
            json.WriteNumber("number", tack.Number);
            json.WriteNumber("place", tack.Place);
            json.WriteNumber("at", ReportJson.Mm(tack.At));
            json.WritePropertyName("formed");
            ReportJson.WritePoint(json, tack.Formed);
            json.WriteNumber("round", tack.Round);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("stitches");
        foreach (Stitch stitch in plan.Stitches)
        {
            json.WriteStartObject();
            json.WriteNumber("number", stitch.Number);
            json.WriteNumber("from", ReportJson.Mm(stitch.From));
            json.WriteNumber("to", ReportJson.Mm(stitch.To));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
