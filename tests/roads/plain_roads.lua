-- The plainest of profiles: a road has the speed that its tag says, a turn costs nothing.
-- So that the shortest times can be computed by anybody from the network alone.

api_version = 4

function setup()
  return { properties = { weight_name = 'duration', u_turn_penalty = 0, use_turn_restrictions = false } }
end

function process_node(profile, node, result, relations)
end

function process_way(profile, way, result, relations)
  local speed = tonumber(way:get_value_by_key('plain_speed'))
  if not speed then
    return
  end
  result.forward_mode = mode.driving
  result.forward_speed = speed
  if way:get_value_by_key('oneway') ~= 'yes' then
    result.backward_mode = mode.driving
    result.backward_speed = speed
  end
end

function process_turn(profile, turn)
  turn.duration = 0
  turn.weight = 0
end

return { setup = setup, process_node = process_node, process_way = process_way, process_turn = process_turn }
