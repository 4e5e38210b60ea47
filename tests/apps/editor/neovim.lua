-- Opens a visit in Neovim, waits for what is wrong with it, looks a word up, takes the fix and waits until nothing is wrong.
-- Prints what it saw as JSON. Told by the environment: COMMAND (JSON, the server), ROOT, VISIT.
local function wait(what, isSo)
  if not vim.wait(20000, isSo, 20) then error(what .. ' did not come') end
end

local ok, problem = pcall(function()
  local root = vim.env.ROOT
  vim.cmd('edit ' .. root .. '/' .. vim.env.VISIT)
  local config = { name = 'growdown', cmd = vim.fn.json_decode(vim.env.COMMAND), root_dir = root }
  local start = vim.lsp.start or function(given) return vim.lsp.buf_attach_client(0, vim.lsp.start_client(given)) end
  start(config)
  local seen = {}
  wait('a problem', function() return #vim.diagnostic.get(0) > 0 end)
  local problem = vim.diagnostic.get(0)[1]
  seen.message = problem.message
  seen.line = problem.lnum

  vim.api.nvim_win_set_cursor(0, { problem.lnum + 1, problem.col })
  local at = {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    position = { line = problem.lnum, character = problem.col },
  }
  local function ask(method, params)
    for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 10000)) do return answer.result end
  end
  seen.hover = ask('textDocument/hover', {
    textDocument = at.textDocument,
    position = { line = tonumber(vim.env.HOVER_LINE), character = 4 },
  }).contents.value
  local actions = ask('textDocument/codeAction', {
    textDocument = at.textDocument,
    range = { start = at.position, ['end'] = at.position },
    context = { diagnostics = {} },
  })
  seen.fix = actions[1].title
  vim.lsp.util.apply_workspace_edit(actions[1].edit, 'utf-16')
  wait('the end of the problem', function() return #vim.diagnostic.get(0) == 0 end)
  seen.lines = vim.api.nvim_buf_get_lines(0, 0, -1, false)
  io.stdout:write('SEEN ' .. vim.fn.json_encode(seen) .. '\n')
end)
if not ok then io.stdout:write('FAILED ' .. tostring(problem) .. '\n') end
vim.cmd('qall!')
