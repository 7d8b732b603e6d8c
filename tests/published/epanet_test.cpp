// SPDX-License-Identifier: GPL-3.0-or-later
// The network against EPANET, the hydraulic engine of the US EPA, on the same networks. Its answers stand in
// tests/published/epanet/*.json with the engine's version; remake.mjs there makes them anew.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "flow/epanet_input.h"
#include "support/reference_networks.h"

using namespace underlawn;

namespace {

const std::string kFolder = std::string(UNDERLAWN_SOURCE_DIR) + "/tests/published/epanet/";

std::string file_text(const std::string& path) {
  std::ifstream in(path);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

TEST(Epanet, InputFilesAreTheOnesTheEngineAnswered) {
  for (const ReferenceNetwork& r : reference_networks()) {
    const NetworkFlow flow = solve_network(r.network, r.fluid, r.flow).value();
    const std::string text = epanet_input(r.network, r.fluid, flow, r.name);
    // UNDERLAWN_REMAKE writes the inputs anew, for remake.mjs --write.
    if (std::getenv("UNDERLAWN_REMAKE")) std::ofstream(kFolder + r.name + ".inp") << text;
    EXPECT_EQ(text, file_text(kFolder + r.name + ".inp")) << r.name;
  }
}

// Turbulent flow: heads within 0.3 %, flows within 0.1 %.
TEST(Epanet, FlowsAndHeadsAgree) {
  for (const ReferenceNetwork& r : reference_networks()) {
    const NetworkFlow flow = solve_network(r.network, r.fluid, r.flow).value();
    const auto answer = nlohmann::json::parse(file_text(kFolder + r.name + ".json"));
    ASSERT_TRUE(answer["engine"].get<std::string>().starts_with("EPANET")) << r.name;
    EXPECT_NEAR(flow.head_loss / answer["nodes"]["IN"]["head_m"].get<double>(), 1, 0.003) << r.name;
    for (std::size_t i = 0; i < r.network.pipes.size(); ++i) {
      const auto& pipe = answer["pipes"]["P" + std::to_string(i)];
      EXPECT_NEAR(1000 * flow.pipes[i].flow / pipe["flow_l_s"].get<double>(), 1, 0.001) << r.name << " " << i;
      EXPECT_EQ(flow.pipes[i].regime, Regime::turbulent) << r.name << " " << r.network.pipes[i].name;
    }
  }
}
