// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/epanet_input.h"

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <locale>
#include <sstream>

namespace underlawn {
namespace {

std::string node_name(const Network& net, int node) {
  if (node == net.inlet) return "IN";
  return node == net.outlet ? "OUT" : "N" + std::to_string(node);
}

// K that makes up for what a straight pipe lacks of a coil's friction at this flow.
double coil_extra(const NetPipe& p, const PipeFlow& flow) {
  if (p.coil_diameter <= 0 || flow.reynolds <= 0) return 0;
  const double more = coil_friction_factor(flow.reynolds, p.bore, p.coil_diameter) -
                      friction_factor(flow.reynolds, p.roughness / p.bore);
  return std::max(0.0, more) * p.length / p.bore;
}

}  // namespace

std::string epanet_input(const Network& net, const FluidProperties& fluid, const NetworkFlow& at,
                         const std::string& title) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out << std::setprecision(10);
  out << "[TITLE]\n" << title << "\n\n[JUNCTIONS]\n;id elevation demand\n";
  for (int n = 0; n < net.nodes; ++n)
    if (n != net.outlet)
      out << node_name(net, n) << " 0 " << (n == net.inlet ? -1000 * at.total_flow : 0) << "\n";
  out << "\n[RESERVOIRS]\nOUT 0\n\n[PIPES]\n;id from to length_m bore_mm roughness_mm minor_loss\n";
  bool coils = false;
  for (std::size_t i = 0; i < net.pipes.size(); ++i) {
    const NetPipe& p = net.pipes[i];
    coils |= p.coil_diameter > 0;
    out << "P" << i << " " << node_name(net, p.from) << " " << node_name(net, p.to) << " " << p.length << " "
        << 1000 * p.bore << " " << 1000 * p.roughness << " " << p.fittings + coil_extra(p, at.pipes[i])
        << " ;" << p.name << "\n";
  }
  if (coils) out << "; minor losses hold the extra friction of coiled pipe at the flows found\n";
  out << "\n[OPTIONS]\nUNITS LPS\nHEADLOSS D-W\nSPECIFIC GRAVITY " << fluid.density / 998.2 << "\nVISCOSITY "
      << fluid.viscosity / fluid.density / 1.021933e-6  // EPANET's unit is 1.1e-5 ft2/s
      << "\nACCURACY 0.000001\nTRIALS 200\n\n[TIMES]\nDURATION 0\n\n[END]\n";
  return out.str();
}

}  // namespace underlawn
