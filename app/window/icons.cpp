// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/icons.h"

#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>
#include <algorithm>

namespace underlawn {

namespace {

struct Drawn {
  std::string_view name;
  const char* svg;  // on a field of 24 by 24, stroked unless it says otherwise; INK is the colour
};

constexpr Drawn kIcons[] = {
    {"select", "<path d='M6 3.5l12.5 8.2-5.6 1.3 3 6.2-2.4 1.1-3-6.1L6.400 18z' stroke-linejoin='round'/>"},
    {"lot",
     "<path d='M4 18.500L6 5l13.500 2.500L20 19.500z'/><g fill='INK'><circle cx='4' cy='18.5' "
     "r='1.6'/><circle "
     "cx='6' cy='5' r='1.6'/><circle cx='19.500' cy='7.500' r='1.6'/><circle cx='20' cy='19.500' "
     "r='1.6'/></g>"},
    {"house", "<path d='M3.500 11.500L12 4l8.500 7.500M6 9.500V20h12V9.500'/>"},
    {"entry",
     "<path d='M13 3.500v17M3 12h13M12.500 8.500L16.500 12l-4 3.500' /><circle cx='20' cy='12' r='1.2' "
     "fill='INK'/>"},
    {"access", "<path d='M3.500 6v12M7 12h12M14.500 7.500L19 12l-4.500 4.500'/>"},
    {"laydown", "<circle cx='12' cy='12' r='8'/><circle cx='12' cy='12' r='4.500'/><path d='M12 20h8'/>"},
    {"drive", "<path d='M8 3.500L4 20.500M16 3.500l4 17M12 4v3.200M12 10.400v3.200M12 16.800V20'/>"},
    {"septic_tank",
     "<rect x='3.500' y='8' width='17' height='11' rx='2.500'/><path d='M8 8V5.500M16 8V5.500M12 "
     "8v11M6 13.500h3M15 13.500h3'/>"},
    {"drain_field", "<path d='M4 5h16M6 5v14M10 5v14M14 5v14M18 5v14' /><path d='M4 9v0M8 9v0' />"},
    {"reserve_field",
     "<path d='M4 5h16' /><path d='M6 5v14M10 5v14M14 5v14M18 5v14' stroke-dasharray='2.2 2.600'/>"},
    {"well",
     "<circle cx='12' cy='12' r='8'/><path d='M12 7.500c2.300 2.800 3 4 3 5.300a3 3 0 0 1-6 "
     "0c0-1.300.7-2.500 "
     "3-5.300z' fill='INK' stroke='none'/>"},
    {"tree",
     "<path d='M12 21v-7M12 17l3-2.500'/><path d='M12 14.500H8.200a4 4 0 0 1-1.500-7.700 5.400 5.400 0 0 1 "
     "10.600 0 4 4 0 0 1-1.500 7.700z'/>"},
    {"utility",
     "<path d='M3 17.500c4 0 4-11 9-11s5 11 9 11' stroke-dasharray='3.500 2.500'/><path d='M12.800 "
     "10.500l-2.300 3.700h3l-2.300 3.800' />"},
    {"easement",
     "<path d='M3.500 8.500h17M3.500 15.500h17' stroke-dasharray='4 2.500'/><path d='M6 15l5-6M12 15l5-6'/>"},
    {"no_dig",
     "<circle cx='12' cy='12' r='8.500'/><path d='M6.200 18L18 6.200'/><path d='M14.800 "
     "17.800l-2.300-2.300'/>"},
    {"trench",
     "<path d='M3.500 19.500L8.500 6.500H20.500V12H12.300L8.800 21z'/><circle cx='7' cy='17.500' r='1.300' "
     "fill='INK' stroke='none'/>"},
    {"height",
     "<path d='M3 19.500h18M12 16V4.500M9 7.500l3-3 3 3'/><circle cx='12' cy='19.500' r='1.500' "
     "fill='INK'/>"},
    {"why", "<path d='M8.500 9a3.500 3.500 0 1 1 5.500 2.800c-1.400 1-2 1.700-2 3.200M12 18.500v1'/>"},
    {"measure",
     "<path d='M3 15.500L15.500 3 21 8.500 8.500 21z'/><path d='M6.500 12l2 2M9.500 9l3 3M12.500 6l2 2'/>"},
    {"move",
     "<path d='M12 3.500v17M3.500 12h17M9.500 6L12 3.500 14.500 6M9.500 18l2.500 2.500 2.500-2.500M6 "
     "9.500L3.500 12 6 14.500M18 9.500l2.500 2.500-2.500 2.500'/>"},
    {"copy", "<path d='M8.500 8.500h11.500v11.500H8.500zM5.500 15.500H4V4h11.500v1.500'/>"},
    {"paste", "<path d='M8 5.500H5v15h14v-15h-3M8.500 4h7v3.500h-7zM8.500 12h7M8.500 15.500h7'/>"},
    {"turn",
     "<path d='M19.500 12a7.500 7.500 0 1 1-2.600-5.700M17.500 2.800v4h-4'/><circle cx='12' cy='12' "
     "r='1.400' fill='INK' stroke='none'/>"},
    {"parallel", "<path d='M4 16L15 5M9 20.500L20.500 9'/><path d='M9.500 10.500l5 5M11.500 15.500h3v-3' />"},
    {"split", "<path d='M3.500 12h6M14.500 12h6M14 5l-4 14'/>"},
    {"dimension",
     "<path d='M4 5v14M20 5v14M4 12h16M6.500 9.500L4 12l2.500 2.500M17.500 9.500L20 12l-2.500 2.500'/>"},
    {"clearance",
     "<circle cx='6' cy='12' r='3'/><rect x='16' y='6' width='5' height='12'/><path d='M9 12h7'/>"},
    {"new", "<path d='M6 3.500h8l4 4v13H6zM14 3.500v4h4'/>"},
    {"open", "<path d='M3.500 19V5.500h6l2 2.500h9V19zM3.500 11h17'/>"},
    {"save", "<path d='M4.500 4.500h12l3 3v12h-15zM8 4.500v5h7v-5M7.500 19.500v-6h9v6'/>"},
    {"sheet", "<path d='M5 3.500h14v17H5zM8 8h8M8 11h8M8 16.500h3v-2.500H8z'/>"},
    {"print", "<path d='M7 9V3.500h10V9M7 17H4V9h16v8h-3M7 14h10v6.500H7z'/>"},
    {"undo", "<path d='M8 4.500L4 8.500l4 4M4.500 8.500H14a5.500 5.500 0 0 1 0 11H8'/>"},
    {"redo", "<path d='M16 4.500l4 4-4 4M19.500 8.500H10a5.500 5.500 0 0 0 0 11h6'/>"},
    {"delete",
     "<path d='M4.500 6.500h15M9 6.500v-3h6v3M6.500 6.500l1 14h9l1-14M10.500 10.500v6M13.500 10.500v6'/>"},
    {"fit",
     "<path d='M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5'/><rect x='8.500' y='8.500' width='7' height='7'/>"},
    {"find", "<circle cx='10.500' cy='10.500' r='6'/><path d='M15 15l5.500 5.500'/>"},
};

const Drawn* find_drawn(std::string_view name) {
  const auto at =
      std::find_if(std::begin(kIcons), std::end(kIcons), [name](const Drawn& d) { return d.name == name; });
  return at == std::end(kIcons) ? nullptr : at;
}

QByteArray svg_of(const Drawn& drawn, const QColor& ink) {
  QByteArray svg =
      "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 24 24'><g fill='none' stroke='INK' "
      "stroke-width='1.6' stroke-linecap='round' stroke-linejoin='round'>";
  svg += drawn.svg;
  svg += "</g></svg>";
  return svg.replace("INK", ink.name().toLatin1());
}

class LineIcon : public QIconEngine {
 public:
  LineIcon(const Drawn& drawn, QColor ink, QColor ink_on) : drawn_(drawn), ink_(ink), ink_on_(ink_on) {}

  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State state) override {
    QColor colour = state == QIcon::On ? ink_on_ : ink_;
    painter->save();
    if (mode == QIcon::Disabled) painter->setOpacity(0.4);
    QSvgRenderer(svg_of(drawn_, colour)).render(painter, QRectF(rect));
    painter->restore();
  }

  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap map(size);
    map.fill(Qt::transparent);
    QPainter painter(&map);
    paint(&painter, QRect({0, 0}, size), mode, state);
    return map;
  }

  QIconEngine* clone() const override { return new LineIcon(drawn_, ink_, ink_on_); }

 private:
  const Drawn& drawn_;
  QColor ink_, ink_on_;
};

}  // namespace

QIcon icon(std::string_view name, const QColor& ink, const QColor& ink_on) {
  const Drawn* drawn = find_drawn(name);
  return drawn == nullptr ? QIcon() : QIcon(new LineIcon(*drawn, ink, ink_on));
}

}  // namespace underlawn
