#include "desktop/edit/tools.h"

#include <algorithm>

#include <QCoreApplication>

#include "tasks/touch_up.h"

namespace pantile::desktop {

using core::Point;
using core::Result;
using core::Texture;
using tasks::TouchOperation;

namespace {

using Places = std::vector<Point>;

tasks::Pen penOf(const ToolSettings& settings) {
    tasks::Pen pen;
    pen.colour = settings.colour;
    pen.brush = settings.brush;
    pen.symmetry = settings.symmetry;
    return pen;
}

// A way of any length, in pieces of as many corners as a line may have; each begins where the one
// before it ends.
void addWay(const Places& places, const tasks::Pen& pen, std::vector<TouchOperation>& operations) {
    std::size_t begin = 0;
    do {
        const std::size_t end = std::min(begin + tasks::kMaxCorners, places.size());
        operations.emplace_back(
            tasks::DrawLine{{places.begin() + static_cast<std::ptrdiff_t>(begin),
                             places.begin() + static_cast<std::ptrdiff_t>(end)},
                            pen});
        begin = end - 1;
    } while (begin + 1 < places.size());
}

Point clamped(Point place, core::Size size) {
    return {std::clamp(place.x, 0, size.width - 1), std::clamp(place.y, 0, size.height - 1)};
}

bool isOn(core::Size size, Point place) {
    return place.x >= 0 && place.y >= 0 && place.x < size.width && place.y < size.height;
}

// What is done at one cell, or to the whole. A fill that begins outside of the grid fills nothing.
void addOnce(const ToolSettings& settings, const Places& places, core::Size size,
             std::vector<TouchOperation>& operations) {
    const Point first = settings.wraps ? wrapped(places.front(), size) : places.front();
    switch (settings.tool) {
        case Tool::Fill:
            if (isOn(size, first))
                operations.emplace_back(tasks::Fill{first, settings.neighbours, penOf(settings)});
            break;
        case Tool::FillAlike:
            if (isOn(size, first))
                operations.emplace_back(tasks::FillAlike{first, penOf(settings)});
            break;
        case Tool::Gradient:
            if (places.front() != places.back()) {
                operations.emplace_back(tasks::DrawGradient{
                    {places.front(), places.back(), {settings.colour, settings.other}}, {}});
            }
            break;
        default:
            operations.emplace_back(
                tasks::Crop{clamped(places.front(), size), clamped(places.back(), size)});
    }
}

// What paints along its places, which may be moved.
void addPainted(const ToolSettings& settings, const Places& places,
                std::vector<TouchOperation>& operations) {
    const tasks::Pen pen = penOf(settings);
    switch (settings.tool) {
        case Tool::Rectangle:
            operations.emplace_back(
                tasks::DrawRectangle{places.front(), places.back(), settings.interior, pen});
            break;
        case Tool::Ellipse:
            operations.emplace_back(
                tasks::DrawEllipse{places.front(), places.back(), settings.interior, pen});
            break;
        case Tool::Curve:
            if (places.size() < 3) {
                addWay({places.front(), places.back()}, pen, operations);
            } else {
                operations.emplace_back(tasks::DrawCurve{places[0], places[2], places[1], pen});
            }
            break;
        case Tool::Line:
            addWay({places.front(), places.back()}, pen, operations);
            break;
        default:
            addWay(places, pen, operations);
    }
}

// Whether something painted along the places, moved by `by`, can reach the grid.
bool reaches(core::Size size, const Places& places, Point by, int brush) {
    const auto [left, right] = std::minmax_element(places.begin(), places.end(),
                                                   [](Point a, Point b) { return a.x < b.x; });
    const auto [top, bottom] = std::minmax_element(places.begin(), places.end(),
                                                   [](Point a, Point b) { return a.y < b.y; });
    return left->x + by.x - brush < size.width && right->x + by.x + brush >= 0 &&
           top->y + by.y - brush < size.height && bottom->y + by.y + brush >= 0;
}

void addAround(const ToolSettings& settings, const Places& places, core::Size size,
               std::vector<TouchOperation>& operations) {
    for (int down = -1; down <= 1; ++down) {
        for (int right = -1; right <= 1; ++right) {
            const Point by{right * size.width, down * size.height};
            if (!reaches(size, places, by, settings.brush.size)) continue;
            Places moved = places;
            for (Point& place : moved) place = {place.x + by.x, place.y + by.y};
            addPainted(settings, moved, operations);
        }
    }
}

bool paintsAlong(Tool tool) {
    return tool == Tool::Pen || tool == Tool::Line || tool == Tool::Curve || isShape(tool);
}

}  // namespace

Point wrapped(Point place, core::Size size) {
    const auto within = [](int at, int side) { return ((at % side) + side) % side; };
    return {within(place.x, size.width), within(place.y, size.height)};
}

int placesOf(Tool tool) {
    switch (tool) {
        case Tool::Fill:
        case Tool::FillAlike:
            return 1;
        case Tool::Curve:
            return 3;
        default:
            return 2;
    }
}

QString toolName(Tool tool) {
    const auto named = [](const char* name) { return QCoreApplication::translate("tools", name); };
    switch (tool) {
        case Tool::Pen:
            return named("Pen");
        case Tool::Line:
            return named("Line");
        case Tool::Rectangle:
            return named("Rectangle");
        case Tool::Ellipse:
            return named("Ellipse");
        case Tool::Curve:
            return named("Curve");
        case Tool::Fill:
            return named("Fill");
        case Tool::FillAlike:
            return named("Fill alike");
        case Tool::Gradient:
            return named("Gradient");
        case Tool::Crop:
            return named("Crop");
    }
    return {};
}

Result<Texture> afterTool(const Texture& texture, const ToolSettings& settings,
                          std::span<const Point> places) {
    if (places.empty()) return texture;
    const Places way(places.begin(), places.end());
    std::vector<TouchOperation> operations;
    if (!paintsAlong(settings.tool)) {
        addOnce(settings, way, texture.grid().size(), operations);
    } else if (settings.wraps) {
        addAround(settings, way, texture.grid().size(), operations);
    } else {
        addPainted(settings, way, operations);
    }
    std::vector<tasks::TouchStep> steps;
    for (TouchOperation& operation : operations)
        steps.push_back({std::move(operation), toolName(settings.tool).toStdString()});
    return tasks::touchedUp(texture, steps, {});
}

}  // namespace pantile::desktop
