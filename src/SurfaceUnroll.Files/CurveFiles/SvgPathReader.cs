using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Reads the data of an SVG path: all commands of SVG 1.1 (second edition, 8.3) and SVG 2 (9.3), absolute and relative.</summary>
/// <param name="data">Value of <c>d</c>.</param>
/// <param name="map">Where the plane of the path goes.</param>
internal sealed class SvgPathReader(string data, DrawingMap map)
{
    private readonly List<ImmutableArray<CurvePiece>> _done = [];
    private readonly List<CurvePiece> _pieces = [];
    private int _at;
    private Vec2 _here, _first;

    // Control point that a smooth command mirrors, and for which commands.
    private Vec2 _handle;
    private char _handleOf;

    /// <summary>What is wrong with the data; null if nothing is.</summary>
    public string? Problem { get; private set; }

    /// <summary>Every part of the path that begins with a move; nothing where there is a <see cref="Problem"/>.</summary>
    public ImmutableArray<ImmutableArray<CurvePiece>> Read()
    {
        char command = '\0';
        bool begun = false;
        while (Problem is null)
        {
            Skip(commas: false);
            if (_at >= data.Length) break;
            if (char.IsAsciiLetter(data[_at])) command = data[_at++];
            else if (command == '\0' || char.ToUpperInvariant(command) == 'Z') Refuse("a command is missing");
            else Skip(commas: true);
            if (Problem is null && !begun && command is not ('M' or 'm')) Refuse("a path begins with M");
            begun = true;
            if (Problem is not null) break;
            Step(command);
            // Pairs after a move are lines.
            if (char.ToUpperInvariant(command) == 'M') command = command == 'm' ? 'l' : 'L';
        }
        if (Problem is not null) return [];
        Close(false);
        return [.. _done];
    }

    private void Step(char command)
    {
        bool relative = char.IsAsciiLetterLower(command);
        char kind = char.ToUpperInvariant(command);
        switch (kind)
        {
            case 'M':
                Close(false);
                _here = _first = Place(relative);
                break;
            case 'L':
                LineTo(Place(relative));
                break;
            case 'H':
                LineTo(_here with { X = Number() + (relative ? _here.X : 0) });
                break;
            case 'V':
                LineTo(_here with { Y = Number() + (relative ? _here.Y : 0) });
                break;
            case 'C':
                Cubic(Place(relative), Place(relative), Place(relative));
                break;
            case 'S':
                Cubic(Mirrored('C'), Place(relative), Place(relative));
                break;
            case 'Q':
                Quadratic(Place(relative), Place(relative));
                break;
            case 'T':
                Quadratic(Mirrored('Q'), Place(relative));
                break;
            case 'A':
                Arc(Number(), Number(), Number(), Flag(), Flag(), Place(relative));
                break;
            case 'Z':
                LineTo(_first);
                Close(true);
                break;
            default:
                _at--;
                Refuse($"“{command}” is no command");
                return;
        }
        if (kind is not ('C' or 'S' or 'Q' or 'T')) _handleOf = '\0';
    }

    private Vec2 Mirrored(char kind) => _handleOf == kind ? 2 * _here - _handle : _here;

    private void LineTo(Vec2 to)
    {
        if (to != _here) Add(new LinePiece(At(_here), At(to)));
        _here = to;
    }

    private void Cubic(Vec2 b, Vec2 c, Vec2 d)
    {
        Add(BezierPieces.Cubic(At(_here), At(b), At(c), At(d)));
        (_here, _handle, _handleOf) = (d, c, 'C');
    }

    private void Quadratic(Vec2 b, Vec2 c)
    {
        Add(BezierPieces.Quadratic(At(_here), At(b), At(c)));
        (_here, _handle, _handleOf) = (c, b, 'Q');
    }

    // From both ends to the centre: SVG 1.1, appendix F.6.5 and F.6.6.
    private void Arc(double rx, double ry, double degrees, bool large, bool sweep, Vec2 to)
    {
        Vec2 from = _here;
        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (from == to || Problem is not null) return;
        if (rx == 0 || ry == 0)
        {
            LineTo(to);
            return;
        }
        double turn = degrees * Math.PI / 180;
        Vec2 half = (0.5 * (from - to)).Rotate(-turn);
        Vec2 unit = new(half.X / rx, half.Y / ry);
        double reach = unit.Length;
        if (reach > 1) (rx, ry, unit, reach) = (rx * reach, ry * reach, (1 / reach) * unit, 1);
        // In the circle of radius 1 that the ellipse is the picture of.
        double off = Math.Sqrt(Math.Max(0, 1 / (reach * reach) - 1)) * (large == sweep ? -1 : 1);
        Vec2 centre = off * new Vec2(unit.Y, -unit.X);
        Vec2 start = unit - centre, end = -unit - centre;
        double angle = Math.Atan2(start.Cross(end), start.Dot(end));
        if (sweep && angle < 0) angle += Math.Tau;
        if (!sweep && angle > 0) angle -= Math.Tau;
        Vec2 middle = new Vec2(rx * centre.X, ry * centre.Y).Rotate(turn) + Vec2.Lerp(from, to, 0.5);
        Vec2 a = new Vec2(rx, 0).Rotate(turn), b = new Vec2(0, ry).Rotate(turn);
        Add(EllipsePiece.Of(At(middle), map.Direction(a.X, a.Y), map.Direction(b.X, b.Y), Math.Atan2(start.Y, start.X), angle));
        _here = to;
    }

    private Vec3 At(Vec2 p) => map.Point(p.X, p.Y);

    private void Add(CurvePiece? piece)
    {
        if (piece is not null && Problem is null) _pieces.Add(piece);
    }

    private void Close(bool closed)
    {
        if (_pieces.Count > 0) _done.Add([.. _pieces]);
        _pieces.Clear();
        if (closed) _here = _first;
    }

    private Vec2 Place(bool relative)
    {
        var place = new Vec2(Number(), Number());
        return relative ? place + _here : place;
    }

    private void Skip(bool commas)
    {
        while (_at < data.Length && (data[_at] is ' ' or '\t' or '\n' or '\r' or '\f' || (commas && data[_at] == ',')))
        {
            // One comma at most between two numbers.
            if (data[_at++] == ',') commas = false;
        }
    }

    private double Number()
    {
        if (Problem is not null) return 0;
        Skip(commas: true);
        int from = _at, digits = 0;
        if (_at < data.Length && data[_at] is '+' or '-') _at++;
        Digits();
        if (_at < data.Length && data[_at] == '.')
        {
            _at++;
            Digits();
        }
        if (digits == 0)
        {
            _at = from;
            return Refuse(_at < data.Length ? "a number is missing" : "it breaks off: a number is missing");
        }
        int exponent = _at;
        if (_at < data.Length && data[_at] is 'e' or 'E')
        {
            _at++;
            if (_at < data.Length && data[_at] is '+' or '-') _at++;
            digits = 0;
            Digits();
            if (digits == 0) _at = exponent;
        }
        double value = double.Parse(data.AsSpan(from, _at - from), NumberStyles.Float, CultureInfo.InvariantCulture);
        return Math.Abs(value) <= 1e9 ? value : Refuse("a number is far too large");

        void Digits()
        {
            for (; _at < data.Length && char.IsAsciiDigit(data[_at]); _at++) digits++;
        }
    }

    // 0 or 1, which may stand without anything between it and the next.
    private bool Flag()
    {
        if (Problem is not null) return false;
        Skip(commas: true);
        if (_at < data.Length && data[_at] is '0' or '1') return data[_at++] == '1';
        Refuse("here should be 0 or 1, a flag of an arc");
        return false;
    }

    private double Refuse(string what)
    {
        Problem ??= string.Create(CultureInfo.InvariantCulture, $"at sign {_at + 1}, {FileFaults.Show(data[Math.Max(0, _at - 8)..Math.Min(data.Length, _at + 8)])}, {what}");
        return 0;
    }
}
